import { sooner } from '../../base/deadline.ts'
import type { Percent } from '../../base/units.ts'
import { answerLay } from '../answer-lay.ts'
import type { Heads } from '../check.ts'
import { matchOf } from '../cloth-match.ts'
import type { LayPlacement } from '../lay.ts'
import type { LayProblem } from '../lay-problem.ts'
import { stretchFinding, waysAllowed, withNeedsEased } from '../stretch-doubt.ts'
import { type Asked, donorProblem } from './asked.ts'
import { COLOUR_MATCHES, poorestMatch } from './colour.ts'
import { type Donor, headingsOn } from './donor.ts'
import type { FindControl } from './find-donors.ts'
import { compareKeys, rankKeys } from './rank.ts'
import { type DonorRow, UNKNOWN } from './row.ts'
import { clothCost, freeArea } from './waste.ts'

/** What a share takes of its cloth, and how its colour serves; as in a row. */
export type ShareCost = Pick<DonorRow, 'colour' | 'price' | 'waste' | 'spoils' | 'stretch' | 'match'>

/** What one of several cloths yields of a role. */
export interface Share extends ShareCost {
  readonly donor: string
  readonly heads: Heads
  /** In the coordinates of `donorProblem(asked, donor, heads)`. */
  readonly placements: readonly LayPlacement[]
}

/** Donors tried together: of the colours wanted before others, the largest first; never more than three cloths for one role. */
const CANDIDATES = 6
const MOST_CLOTHS = 3
/** A try may take so long, ms. */
const TRY_MS = 300

/**
 * One role's pieces from several cloths, where the maker lets it be blocked: of the likeliest donors every two, then
 * every three, the likeliest first, each told when a whole lay is found. Nothing is said of those that are not told.
 *
 * @param rows What each donor yields by itself.
 */
export function* splitOver(
  asked: Asked,
  donors: readonly Donor[],
  rows: readonly DonorRow[],
  control: FindControl,
): Generator<readonly Share[], void> {
  const likely = likeliest(asked, donors, rows)
  for (let cloths = 2; cloths <= MOST_CLOTHS; cloths++) {
    let found = false
    for (const together of subsets(likely, cloths)) {
      if (control.deadline.passed()) return
      const shares = sharedOver(asked, together, control)
      if (shares) {
        found = true
        yield shares
      }
    }
    if (found) return
  }
}

/** Ways, best first: by the keys that donors are ranked by, added up over their shares. */
export function rankedWays<T extends ShareCost>(
  ways: readonly (readonly T[])[],
  area: number,
): readonly (readonly T[])[] {
  const keysOf = (way: readonly T[]) => {
    const keys = way.map((share) => rankKeys({ ...share, verdict: 'fits', missing: 0 }, area))
    return [way.length, ...(keys[0] ?? []).map((_, k) => keys.reduce((sum, each) => sum + (each[k] ?? 0), 0))]
  }
  return ways
    .map((way) => ({ way, keys: keysOf(way) }))
    .sort((a, b) => compareKeys(a.keys, b.keys))
    .map(({ way }) => way)
}

function likeliest(asked: Asked, donors: readonly Donor[], rows: readonly DonorRow[]): readonly Donor[] {
  const hopeful = rows.filter(({ verdict, lay }) => verdict !== 'fits' && !wrongCloth(lay.reason?.kind))
  const ids = new Set(hopeful.map(({ donor }) => donor))
  return donors
    .filter(({ id }) => ids.has(id))
    .map((donor) => {
      const colour = COLOUR_MATCHES.indexOf(poorestMatch(donor.colour, asked.colours))
      return { donor, keys: [colour, -freeArea(donor.panels)] }
    })
    .sort((a, b) => compareKeys(a.keys, b.keys))
    .slice(0, CANDIDATES)
    .map(({ donor }) => donor)
}

/** Some piece may lie nowhere on such a cloth. It may still serve for others, but she would not mix them. */
function wrongCloth(kind: string | undefined): boolean {
  return kind === 'stretch' || kind === 'surface' || kind === 'cloth'
}

/** With all measures at their word, else as if each stretch were more by the doubt. */
function sharedOver(asked: Asked, donors: readonly Donor[], control: FindControl): readonly Share[] | null {
  const { stretchDoubt = 0 } = asked
  const exact = sharedEased(asked, donors, 0, control)
  return exact ?? (stretchDoubt > 0 ? sharedEased(asked, donors, stretchDoubt, control) : null)
}

function sharedEased(
  asked: Asked,
  donors: readonly Donor[],
  by: Percent,
  control: FindControl,
): readonly Share[] | null {
  for (const headings of headingsOf(donors)) {
    const problem = pooled(asked, donors, headings)
    const eased = withNeedsEased(problem, by)
    if (by > 0 && waysAllowed(problem) === waysAllowed(eased)) return null
    const lay = answerLay(eased, {
      seed: control.seed,
      clock: control.clock,
      deadline: sooner(control.deadline, TRY_MS, control.clock),
      spareAsked: 0,
    })
    if (lay.verdict !== 'fits') continue
    const shares = donors.map((donor, d) => {
      const own = donor.panels.map((panel) => pooledId(d, panel.id))
      const placements = lay.placements
        .filter(({ panel }) => own.includes(panel))
        .map((placement) => ({ ...placement, panel: placement.panel.slice(pooledId(d, '').length) }))
      return shareOf(asked, donor, headings[d] as Heads, placements)
    })
    if (shares.every(({ placements }) => placements.length > 0)) return shares
  }
  return null
}

function shareOf(asked: Asked, donor: Donor, heads: Heads, placements: readonly LayPlacement[]): Share {
  const colour = poorestMatch(donor.colour, asked.colours)
  const problem = donorProblem(asked, donor, heads)
  const stretch =
    asked.stretchDoubt === undefined ? undefined : stretchFinding(problem, placements, asked.stretchDoubt)
  return {
    donor: donor.id,
    heads,
    placements,
    colour,
    price: donor.price,
    match: matchOf(asked.cloths, donor.made ?? UNKNOWN),
    stretch: stretch?.standing ?? null,
    ...clothCost(problem, { placements }),
  }
}

/** All panels in one problem, their ids told apart by the donor's place in the list. */
function pooled(asked: Asked, donors: readonly Donor[], headings: readonly Heads[]): LayProblem {
  const problems = donors.map((donor, d) => donorProblem(asked, donor, headings[d] as Heads))
  const panels = problems.flatMap((problem, d) =>
    problem.panels.map((panel) => ({ ...panel, id: pooledId(d, panel.id) })),
  )
  return { ...(problems[0] as LayProblem), panels }
}

function pooledId(donor: number, panel: string): string {
  return `${donor} ${panel}`
}

function headingsOf(donors: readonly Donor[]): readonly (readonly Heads[])[] {
  return donors.reduce<readonly (readonly Heads[])[]>(
    (lists, donor) => headingsOn(donor).flatMap((heads) => lists.map((list) => [...list, heads])),
    [[]],
  )
}

/** All choices of `size` of the list, in its order. */
function subsets<T>(list: readonly T[], size: number): readonly (readonly T[])[] {
  if (size === 0) return [[]]
  return list.flatMap((first, i) => subsets(list.slice(i + 1), size - 1).map((rest) => [first, ...rest]))
}
