import type { Signal } from '@preact/signals'
import { holdUnwritten } from './unwritten.ts'

/**
 * Writes values one after another: while one is being written only the newest of those that follow waits, and none
 * is lost at the end. What the device refuses stands in `trouble`, and is held until it can be written or a newer value is.
 */
export function inTurn<T>(write: (value: T) => Promise<void>, trouble: Signal<unknown>): (value: T) => void {
  let waiting: { readonly value: T } | null = null
  let writing = false
  const go = async () => {
    if (writing) return
    writing = true
    let refused: unknown = null
    while (waiting && refused === null) {
      const now: { readonly value: T } = waiting
      waiting = null
      try {
        await write(now.value)
      } catch (error) {
        // A newer value stands for this one too.
        if (!waiting) [waiting, refused] = [now, error]
      }
    }
    writing = false
    trouble.value = refused
    holdUnwritten(tryAgain, refused)
  }
  const tryAgain = () => void go()
  return (value) => {
    waiting = { value }
    void go()
  }
}
