import { findChromium } from '../../src/terminal/bench/chromium.ts'

export const LEFT_OUT = 'Without a Chromium the browser tests (tests/browser) are left out.'

/** Says last of all, where it is seen, which tests a run has left out. */
export default function sayWhatIsLeftOut(): () => void {
  return () => {
    if (findChromium() === null) console.warn(`\n${LEFT_OUT}`)
  }
}
