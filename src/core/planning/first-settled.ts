import type { Lay } from './lay.ts'

/**
 * The answer to go by when one question is searched from several seeds at once: the first that is settled, a lay or a
 * proof; when all have ended without, the one that leaves out the fewest copies. Once `enough` has passed, the best so
 * far will do, or the next to come. Rejects with the first fault if every try fails.
 *
 * @param layOf The lay that an answer holds; null: none, which settles the question too.
 */
export function firstSettled<T>(
  tries: readonly Promise<T>[],
  layOf: (answer: T) => Lay | null,
  enough: Promise<unknown>,
): Promise<T> {
  return new Promise((resolve, reject) => {
    let best: { readonly answer: T; readonly open: number } | null = null
    let fault: { readonly reason: unknown } | null = null
    let running = tries.length
    let late = false
    const end = () => (best ? resolve(best.answer) : reject(fault?.reason))
    const hear = (answer: T) => {
      const open = openCopies(layOf(answer))
      if (best === null || open < best.open) best = { answer, open }
      if (late || open === 0) end()
    }
    const trip = (reason: unknown) => {
      fault ??= { reason }
    }
    const leave = () => {
      running--
      if (running === 0) end()
    }
    for (const one of tries) void one.then(hear, trip).then(leave)
    const nothing = () => {}
    void enough.then(() => {
      late = true
      if (best) end()
    }, nothing)
  })
}

/** Copies for which no place was found and none was ruled out; 0 once the question is settled. */
function openCopies(lay: Lay | null): number {
  return lay?.verdict === 'not-found' ? Math.max(1, lay.leftOut.length) : 0
}
