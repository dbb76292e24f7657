import { sooner } from '../../base/deadline.ts'
import { answerLay } from '../answer-lay.ts'
import type { Heads } from '../check.ts'
import type { LayPlacement } from '../lay.ts'
import type { LayProblem } from '../lay-problem.ts'
import { type Asked, donorProblem } from './asked.ts'
import { type Donor, headingsOn } from './donor.ts'
import type { FindControl } from './find-donors.ts'
import { ranked } from './rank.ts'
import type { DonorRow } from './row.ts'
import { freeArea } from './waste.ts'

/** What one of several cloths yields of a role. */
export interface Share {
  readonly donor: string
  readonly heads: Heads
  /** In the coordinates of `donorProblem(asked, donor, heads)`. */
  readonly placements: readonly LayPlacement[]
}

/** Donors tried together: the most promising ones, and never more than three cloths for one role. */
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
  const known = new Map(donors.map((donor) => [donor.id, donor]))
  const likely = ranked(
    rows.filter(({ verdict, lay }) => verdict !== 'fits' && !wrongCloth(lay.reason?.kind)),
    asked.area,
  )
    .flatMap(({ donor }) => known.get(donor) ?? [])
    .sort((a, b) => freeArea(b.panels) - freeArea(a.panels))
    .slice(0, CANDIDATES)
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

/** Some piece may lie nowhere on such a cloth. It may still serve for others, but she would not mix them. */
function wrongCloth(kind: string | undefined): boolean {
  return kind === 'stretch' || kind === 'surface' || kind === 'cloth'
}

function sharedOver(asked: Asked, donors: readonly Donor[], control: FindControl): readonly Share[] | null {
  for (const headings of headingsOf(donors)) {
    const lay = answerLay(pooled(asked, donors, headings), {
      seed: control.seed,
      clock: control.clock,
      deadline: sooner(control.deadline, TRY_MS, control.clock),
      spareAsked: 0,
    })
    if (lay.verdict !== 'fits') continue
    const shares = donors.map(({ id, panels }, d): Share => {
      const own = panels.map((panel) => pooledId(d, panel.id))
      const placements = lay.placements
        .filter(({ panel }) => own.includes(panel))
        .map((placement) => ({ ...placement, panel: placement.panel.slice(pooledId(d, '').length) }))
      return { donor: id, heads: headings[d] as Heads, placements }
    })
    if (shares.every(({ placements }) => placements.length > 0)) return shares
  }
  return null
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
