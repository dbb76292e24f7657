import type { ClothRole } from '../../base/terms.ts'
import type { Mm } from '../../base/units.ts'
import { polygonOriented } from '../../geometry/transform.ts'
import type { Item } from '../../packing/problem.ts'
import { packStrip, type StripControl } from '../../packing/strip.ts'
import type { LayPiece, LayProblem } from '../lay-problem.ts'
import { translateProblem } from '../translate.ts'

/** The pieces that one cloth must yield, and the gap between them. */
export interface ClothPieces {
  readonly role: ClothRole
  readonly clearance: Mm
  readonly pieces: readonly LayPiece[]
}

/** What the same pieces would take from new cloth. */
export interface NewClothLength {
  readonly role: ClothRole
  /** The shortest length found in the time; null: a piece is wider than the cloth. */
  readonly length: Mm | null
}

/** Longer than any cloth, so that no piece is refused for its length. */
const ENDLESS: Mm = 1e6

/** A quarter turn brings the grain, which is +y in a lay, to the +x that a strip is long in. */
const ALONG_STRIP = { turn: 90, mirrored: false }

/**
 * The length of new cloth, `width` wide and laid single, that the pieces would take: plain, stretching as asked, one right
 * side. The optional ones are cut too. The same packing as everywhere, on a strip, so the figure is what one could really cut.
 */
export function newClothLength(
  { role, clearance, pieces }: ClothPieces,
  width: Mm,
  control: Omit<StripControl, 'onProgress'>,
): NewClothLength {
  const { packing } = translateProblem(onNewCloth(pieces, clearance, width))
  const items = packing.items.map((item): Item => {
    return { ...item, optional: false, outline: polygonOriented(item.outline, ALONG_STRIP) }
  })
  if (items.some((item) => !fitsAcross(item, width))) return { role, length: null }
  const { length } = packStrip({ height: width, clearance, items }, control)
  return { role, length: Number.isFinite(length) ? length : null }
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
    stretch: null,
    surface: 'plain',
    faces: 1,
    cloth: null,
  } as const
  const bare = pieces.map(({ sit: _, shows: __, ...piece }) => ({ ...piece, cloth: null }))
  return { name: '', clearance, seconds: 0, panels: [panel], pieces: bare }
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
