import type { SolveControl } from '../check.ts'
import { type Asked, areaOf } from './asked.ts'
import { poorestMatch } from './colour.ts'
import type { Donor } from './donor.ts'
import { inPasses, type PassControl } from './passes.ts'
import { compareKeys, rankKeys } from './rank.ts'
import { type DonorRow, lookAt } from './row.ts'

/** How long it may take, from which seed, and how long each look after the first may be. */
export type FindControl = Pick<SolveControl, 'seed' | 'clock' | 'deadline'> & Partial<PassControl>

/** Donors sorted by promise at once, few at first: the first rows shall be good ones, but not wait for the panels of all. */
const BATCH = { first: 4, most: 64 }

/**
 * What each donor would yield, told row by row: first a glance at every donor, the likeliest of each few first, then
 * longer and longer looks at those that are undecided, the best first. A later row of a donor takes the place of its
 * earlier one. Ends when all are settled or at the deadline; given the rows so far, it goes on from there.
 */
export function* findDonors(
  asked: Asked,
  donors: Iterable<Donor>,
  control: FindControl,
  known: readonly DonorRow[] = [],
): Generator<DonorRow, void> {
  const rows = new Map(known.map((row) => [row.donor, row]))
  yield* inPasses(likeliestFirst(asked, donors), {
    control,
    known: ({ id }) => rows.get(id) ?? null,
    look: (donor, limits, before, isLast) => lookAt(asked, donor, limits, before, isLast),
    compare: (a, b) => compareKeys(rankKeys(a, asked.area), rankKeys(b, asked.area)),
  })
}

/** Batch by batch: enough cloth before too little, colours as wanted before others, then the least cloth to spare. */
function* likeliestFirst(asked: Asked, donors: Iterable<Donor>): Generator<Donor, void> {
  let batch: Donor[] = []
  let size = BATCH.first
  for (const donor of donors) {
    batch.push(donor)
    if (batch.length < size) continue
    yield* byPromise(asked, batch)
    batch = []
    size = Math.min(2 * size, BATCH.most)
  }
  yield* byPromise(asked, batch)
}

function byPromise(asked: Asked, donors: readonly Donor[]): readonly Donor[] {
  return donors
    .map((donor) => {
      const room = donor.panels.reduce((sum, panel) => sum + areaOf(panel), 0)
      const colour = poorestMatch(donor.colour, asked.colours) === 'as-wanted' ? 0 : 1
      return { donor, keys: [room < asked.area ? 1 : 0, colour, room] }
    })
    .sort((a, b) => compareKeys(a.keys, b.keys))
    .map(({ donor }) => donor)
}
