import type { Signal } from '@preact/signals'

/**
 * Writes values one after another: while one is being written only the newest of those that follow waits, and none
 * is lost at the end. The last error stands in `trouble` until a write succeeds again.
 */
export function inTurn<T>(write: (value: T) => Promise<void>, trouble: Signal<unknown>): (value: T) => void {
  let waiting: { readonly value: T } | null = null
  let writing = false
  const go = async () => {
    writing = true
    while (waiting) {
      const { value } = waiting
      waiting = null
      try {
        await write(value)
        trouble.value = null
      } catch (error) {
        trouble.value = error
      }
    }
    writing = false
  }
  return (value) => {
    waiting = { value }
    if (!writing) void go()
  }
}
