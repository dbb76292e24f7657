import type { Mm } from '../core/base/units.ts'
import { type Asked, askedOf, donorProblem } from '../core/planning/donors/asked.ts'
import { type Share, splitOver } from '../core/planning/donors/blocking.ts'
import { type Donor, donorOf } from '../core/planning/donors/donor.ts'
import { type FindControl, findDonors } from '../core/planning/donors/find-donors.ts'
import { yieldsOf } from '../core/planning/donors/yields.ts'
import type { LayPlacement } from '../core/planning/lay.ts'
import { stretchFinding } from '../core/planning/stretch-doubt.ts'
import type { DonorsAsked, GarmentNow, Jobs } from './protocol.ts'

/** The rows of many garments. None when the pattern lacks what is asked. */
export function* donorRows({ question, from }: DonorsAsked, control: FindControl) {
  const asked = askedOf(question)
  if (asked.ok) yield* findDonors(asked.value, donorsOf(from, asked.value.clearance), control)
}

/** Ways to take one role from several cloths, as answers that can be reserved. */
export function* blockedWays(
  { question, from, rows }: Jobs['blocking']['asks'],
  control: FindControl,
): Generator<Jobs['blocking']['tells'], void> {
  const asked = askedOf(question)
  if (!asked.ok) return
  const donors = [...donorsOf(from, asked.value.clearance)]
  for (const shares of splitOver(asked.value, donors, rows, control))
    yield shares.map((share) => answerOf(asked.value, donors, share))
}

/** What one garment would yield. */
export function yieldRows(
  { patterns, clearance, stretchDoubt, from }: Jobs['yields']['asks'],
  control: FindControl,
) {
  const donor = donorOf(from.garment, clearance, from.taken)
  return yieldsOf(donor, patterns, { clearance, stretchDoubt }, control)
}

/** One at a time: the first rows need not wait for the panels of a thousand garments. */
function* donorsOf(from: readonly GarmentNow[], clearance: Mm): Generator<Donor, void> {
  for (const { garment, taken } of from) yield donorOf(garment, clearance, taken)
}

function answerOf(
  asked: Asked,
  donors: readonly Donor[],
  { donor: id, heads, placements, ...cost }: Share,
): Jobs['blocking']['tells'][number] {
  const donor = donors.find((each) => each.id === id) as Donor
  const problem = donorProblem(asked, donor, heads)
  const laid = new Set(placements.map(copyOf))
  const leftOut = problem.pieces
    .flatMap(({ id: piece, count }) => Array.from({ length: count }, (_, k) => `${piece}#${k + 1}`))
    .filter((copy) => !laid.has(copy))
  const open = { verdict: 'not-found', spare: null, spareIs: null } as const
  const lay = { ...open, placements, reason: null, leftOut, elapsedMs: 0 }
  const { stretchDoubt } = asked
  const stretch = stretchDoubt === undefined ? undefined : stretchFinding(problem, placements, stretchDoubt)
  return { ...cost, garment: id, answer: { problem, lay, heads, ...(stretch ? { stretch } : {}) } }
}

function copyOf({ piece, copy }: LayPlacement): string {
  return `${piece}#${copy}`
}
