import type { RemedyMaker } from './remedy.ts'

/** Farther down it would be a garment for somebody else; the table of sizes shows those. */
const MOST_DOWN = 2

/** Makes the next smaller size, or the one below that. */
export const smallerSize: RemedyMaker = {
  kinds: ['smaller-size'],
  propose(question) {
    const at = question.pattern.sizes.indexOf(question.size)
    return question.pattern.sizes
      .slice(Math.max(0, at - MOST_DOWN), Math.max(0, at))
      .reverse()
      .map((size, k) => ({
        steps: [{ kind: 'smaller-size', size, down: k + 1 }],
        question: { ...question, size },
      }))
  },
}
