import { computed, signal } from '@preact/signals'

type TryAgain = () => void

/** Writers that hold what the device refused, by their way to try again. */
const holding = signal<ReadonlyMap<TryAgain, unknown>>(new Map())

/** Why something that she changed is not stored yet; null: all of it is. */
export const unwritten = computed<unknown>(() => [...holding.value.values()].at(-1) ?? null)

/** A writer says what the device refused it, or null once it holds nothing any more. `tryAgain` tells it from others. */
export function holdUnwritten(tryAgain: TryAgain, refused: unknown): void {
  if (refused === null && !holding.peek().has(tryAgain)) return
  const now = new Map(holding.peek())
  now.delete(tryAgain)
  if (refused !== null) now.set(tryAgain, refused)
  holding.value = now
}

/** Has every writer try again, as after she has made room. */
export function writeAgain(): void {
  for (const tryAgain of holding.peek().keys()) tryAgain()
}
