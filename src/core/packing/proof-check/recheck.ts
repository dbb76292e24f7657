import type { Certificate, Refutation } from '../answer.ts'
import type { PackingProblem } from '../problem.ts'
import { haveNoOtherChoice, withWays } from './alike.ts'
import { haveNoCells } from './cells.ts'
import { exceedsArea } from './enough-area.ts'
import { coversAPoint, hasNoPlace } from './no-place.ts'
import { OutOfWork, Work } from './paving.ts'
import { exceedsReach } from './reach.ts'
import { cannotBeShared } from './sharing.ts'
import { haveNoSquares } from './squares.ts'

/** `open`: not followed to its end within the work and the fineness allowed; nothing is said for it or against it. */
export type Recheck = 'holds' | 'open' | 'fails'

/**
 * Verifies what a refutation rests on, by code that shares nothing with what found it. `work` bounds the time, in sets
 * compared with a box: some 20 million a second.
 */
export function recheck(problem: PackingProblem, refutation: Refutation, work: number): Recheck {
  const account = new Work(work)
  try {
    if (isProof(problem, refutation, account)) return 'holds'
    return account.unclear ? 'open' : 'fails'
  } catch (error) {
    if (error instanceof OutOfWork) return 'open'
    throw error
  }
}

function isProof(problem: PackingProblem, refutation: Refutation, work: Work): boolean {
  return isAbout(problem, refutation) && holds(problem, refutation.certificate, work)
}

function holds(problem: PackingProblem, certificate: Certificate, work: Work): boolean {
  switch (certificate.by) {
    case 'area':
      return exceedsArea(problem, certificate.items)
    case 'reach':
      return exceedsReach(problem, certificate.items, certificate.regions, work)
    case 'no-place':
      return hasNoPlace(problem, certificate.item, work)
    case 'sharing':
      return cannotBeShared(problem, certificate.copies, work)
    case 'points': {
      const { items, points } = certificate
      const copies = items.reduce((sum, i) => sum + problem.items[i]!.copies, 0)
      return (
        copies > points.flat().length &&
        items.every((i) =>
          problem.regions.every((_, r) => coversAPoint(problem, i, r, points[r] ?? [], work)),
        )
      )
    }
    case 'squares':
      return haveNoSquares(problem, certificate.unit, work)
    case 'alike':
      return (
        haveNoOtherChoice(problem, certificate.choices, work) &&
        certificate.choices.every(({ ways, refutation }) =>
          isProof(withWays(problem, ways), refutation, work),
        )
      )
    case 'cells':
      return haveNoCells(problem, certificate.copies, certificate.step, certificate.tilt, work)
  }
}

/** True if the certificate speaks of the items that the refutation names, of needed ones only, and of no more copies than there are. */
function isAbout(problem: PackingProblem, { items, certificate }: Refutation): boolean {
  const copies = copiesIn(problem, certificate)
  const named = new Set(copies)
  return (
    named.size === items.length &&
    items.every((i) => named.has(i)) &&
    [...named].every((i) => {
      const item = problem.items[i]
      return item && !item.optional && copies.filter((copy) => copy === i).length <= item.copies
    })
  )
}

/** The items that a certificate speaks of, one entry for each copy where it counts them. */
function copiesIn({ items }: PackingProblem, certificate: Certificate): readonly number[] {
  switch (certificate.by) {
    case 'area':
    case 'reach':
    case 'points':
      return certificate.items
    case 'no-place':
      return [certificate.item]
    case 'sharing':
    case 'cells':
      return certificate.copies
    case 'alike':
      return [...new Set(certificate.choices.flatMap(({ refutation }) => refutation.items))]
    case 'squares':
      return items.flatMap(({ optional }, i) => (optional ? [] : [i]))
  }
}
