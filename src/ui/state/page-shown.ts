import { effect, signal } from '@preact/signals'
import type { Solvers } from '../../workers/bridge.ts'

/** False while the page is behind another, or the phone is asleep: nobody waits then, and the battery is hers. */
export const pageShown = signal(true)

/** Called once, at the start of the app. */
export function followPageShown(): void {
  const look = () => {
    pageShown.value = document.visibilityState !== 'hidden'
  }
  document.addEventListener('visibilitychange', look)
  look()
}

/** Has the workers rest while the page is hidden, and go on when it is seen again. */
export function restWhenHidden(solvers: Solvers): void {
  effect(() => (pageShown.value ? solvers.wake() : solvers.rest()))
}
