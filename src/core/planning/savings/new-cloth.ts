import { sooner } from '../../base/deadline.ts'
import { ok, type Result } from '../../base/result.ts'
import type { ClothRole, Stretch } from '../../base/terms.ts'
import type { Mm } from '../../base/units.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import { everyChoice } from '../../packing/alike/restrict.ts'
import type { Item, PackingProblem } from '../../packing/problem.ts'
import { packStrip, type StripControl } from '../../packing/strip.ts'
import type { Pattern } from '../../patterns/pattern.ts'
import { piecesOf } from '../../patterns/pieces-of.ts'
import type { LayPiece, LayProblem } from '../lay-problem.ts'
import { plainPiece } from '../plain-piece.ts'
import { translateProblem } from '../translate.ts'

/** What is made. */
export interface Making {
  readonly pattern: Pattern
  /** Id. */
  readonly version: string
  readonly size: string
  /** Least gap between pieces; the pattern may ask for more. */
  readonly clearance: Mm
}

/** What the pieces of one role would take from new cloth. */
export interface NewClothLength {
  readonly role: ClothRole
  /** The shortest length found in the time; null: a piece is wider than the cloth. */
  readonly length: Mm | null
}

/**
 * The lengths of new cloth that a project would take, role by role: `width` wide, laid single, plain, stretching as asked, one right
 * side. Optional pieces are cut too. The same packing as everywhere, on a strip, so each is a length one could really cut from.
 * Fails as piecesOf does.
 */
export function newClothLengths(
  { pattern, version, size, clearance }: Making,
  width: Mm,
  { seed, clock, deadline }: Omit<StripControl, 'onProgress'>,
): Result<readonly NewClothLength[]> {
  const pieces = piecesOf(pattern, version, size)
  if (!pieces.ok) return pieces
  const roles = [...new Set(pieces.value.map(({ piece }) => piece.role))]
  const gap = Math.max(clearance, pattern.clearance)
  return ok(
    roles.map((role, k) => {
      const mine = pieces.value.filter(({ piece }) => piece.role === role).map(plainPiece)
      const share = sooner(deadline, deadline.left() / (roles.length - k), clock)
      return { role, length: lengthFor(mine, gap, width, { seed, clock, deadline: share }) }
    }),
  )
}

/** Longer than any cloth, so that no piece is refused for its length. */
const ENDLESS: Mm = 1e6

/** A quarter turn brings the grain, which is +y in a lay, to the +x that a strip is long in. */
const ALONG_STRIP = { turn: 90, mirrored: false }

function lengthFor(pieces: readonly LayPiece[], clearance: Mm, width: Mm, control: StripControl): Mm | null {
  const { packing } = translateProblem(onNewCloth(pieces, clearance, width))
  const choices = everyChoice(packing, MOST_CHOICES)
  const lengths = choices.flatMap((chosen, k) => {
    const share = sooner(control.deadline, control.deadline.left() / (choices.length - k), control.clock)
    return lengthOf(chosen, clearance, width, { ...control, deadline: share }) ?? []
  })
  return lengths.length > 0 ? Math.min(...lengths) : null
}

/** Ways in which copies that turn alike may be turned: more would take too long for a figure beside others. */
const MOST_CHOICES = 8

function lengthOf(packing: PackingProblem, clearance: Mm, width: Mm, control: StripControl): Mm | null {
  const items = packing.items.map((item): Item => {
    return { ...item, optional: false, outline: polygonOriented(item.outline, ALONG_STRIP) }
  })
  if (items.some((item) => !fitsAcross(item, width))) return null
  const { length } = packStrip({ height: width, clearance, items }, control)
  return Number.isFinite(length) ? length : null
}

function onNewCloth(pieces: readonly LayPiece[], clearance: Mm, width: Mm): LayProblem {
  const panel = {
    id: 'new cloth',
    outline: [
      [0, 0],
      [width, 0],
      [width, ENDLESS],
      [0, ENDLESS],
    ],
    flaws: [],
    stretch: stretchAsked(pieces),
    surface: 'plain',
    faces: 1,
    cloth: null,
  } as const
  return { name: '', clearance, seconds: 0, panels: [panel], pieces }
}

/** New cloth is bought for what it is to become: it stretches as much as the piece that needs most. */
function stretchAsked(pieces: readonly LayPiece[]): Stretch {
  return {
    across: Math.max(0, ...pieces.map(({ needs }) => needs.across)),
    along: Math.max(0, ...pieces.map(({ needs }) => needs.along)),
  }
}

/** True if the item is no wider than the cloth in some turn it may take. */
function fitsAcross({ outline, ways }: Item, width: Mm): boolean {
  const turns = (ways[0] ?? []).flatMap(({ turn, tilt }) =>
    tilt < 90 ? [turn] : Array.from({ length: 180 }, (_, degrees) => degrees),
  )
  return turns.some((turn) => {
    const ys = polygonOriented(outline, { turn, mirrored: false }).map(([, y]) => y)
    return Math.max(...ys) - Math.min(...ys) <= width
  })
}
