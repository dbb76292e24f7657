import type { StoreName } from './schema.ts'

export type ChangeListener = (stores: readonly StoreName[]) => void

/** Tells every tab, this one included, which stores have changed. */
export interface Changes {
  announce: ChangeListener
  listen(listener: ChangeListener): () => void
  close(): void
}

export function openChanges(name: string): Changes {
  const listeners = new Set<ChangeListener>()
  const channel = new BroadcastChannel(`${name}-changes`)
  const tellHere: ChangeListener = (stores) => {
    for (const listener of listeners) listener(stores)
  }
  channel.onmessage = ({ data }: MessageEvent<readonly StoreName[]>) => tellHere(data)
  return {
    announce(stores) {
      // A channel never hears itself.
      channel.postMessage(stores)
      tellHere(stores)
    },
    listen(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    close() {
      listeners.clear()
      channel.close()
    },
  }
}
