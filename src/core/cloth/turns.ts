import type { ClothRole, Faces, Grain, Stretch, Surface } from '../base/terms.ts'
import { inCircle, sharedRange, type TurnRange } from '../base/turn-range.ts'
import type { Deg } from '../base/units.ts'
import type { Way } from '../geometry/types.ts'
import { type Hold, stretchServes } from './stretch.ts'
import { turnsAskedFor } from './turn-ranges.ts'

/** What a piece asks of the cloth; `LayPiece` is one. */
export interface ClothRule {
  readonly grain: Grain
  /** Degrees that replace what `grain` gives; null: by `grain`. */
  readonly turns: readonly Deg[] | null
  readonly tilt: Deg
  readonly needs: Stretch
  /** `any`: pile and one-way prints do not matter to this piece. */
  readonly surface: 'as-panel' | 'any'
  readonly cloth: ClothRole | null
}

/** What the cloth of a panel is; `LayPanel` is one. */
export interface PanelCloth {
  readonly stretch: Stretch | null
  readonly surface: Surface
  readonly faces: Faces
  readonly cloth: ClothRole | null
}

/** Which side of a copy must come up on cloth with one right side; `free`: either. */
export type CopySide = 'as-drawn' | 'turned-over' | 'free'

/** Why a panel does not serve a piece: another cloth, too little stretch in every turn, or its heads cannot point up the pile. */
export type NoTurn = 'cloth' | 'surface' | 'stretch'

/** Every turn in which the piece may lie on the panel, or the first rule that leaves none. */
export function turnsOn(piece: ClothRule, panel: PanelCloth): readonly TurnRange[] | NoTurn {
  if (piece.cloth !== null && panel.cloth !== null && piece.cloth !== panel.cloth) return 'cloth'
  const asked = turnsAskedFor(piece.grain, piece.turns, piece.tilt)
  const oneWay = panel.surface === 'one-way' && piece.surface !== 'any'
  const upright = oneWay
    ? asked.flatMap((range) => sharedRange(range, { turn: 0, tilt: piece.tilt }) ?? [])
    : asked
  if (upright.length === 0) return 'surface'
  const stretchy = upright.flatMap((range) => turnsThatStretch(range, piece, panel.stretch))
  return stretchy.length === 0 ? 'stretch' : stretchy
}

/** Those of the turns that are `up` to within the piece's tilt: the ways to show what has an up of its own. */
export function turnsUpright(
  ranges: readonly TurnRange[],
  { tilt }: Pick<ClothRule, 'tilt'>,
  up: Deg,
): readonly TurnRange[] {
  return ranges.flatMap((range) => sharedRange(range, { turn: inCircle(up), tilt }) ?? [])
}

/**
 * Orientations for one copy of the piece on the panel. A copy may be turned over wherever both faces serve;
 * else its side decides. `up`: it shows what points there. Empty: it may not lie there.
 */
export function waysOn(piece: ClothRule, panel: PanelCloth, side: CopySide, up?: Deg): readonly Way[] {
  const allowed = turnsOn(piece, panel)
  if (typeof allowed === 'string') return []
  const ranges = up === undefined ? allowed : turnsUpright(allowed, piece, up)
  const sides = panel.faces === 2 || side === 'free' ? [false, true] : [side === 'turned-over']
  return sides.flatMap((mirrored) => ranges.map((range) => ({ ...range, mirrored })))
}

const QUARTERS: readonly (readonly [Deg, Hold])[] = [
  [0, 'lengthwise'],
  [90, 'crosswise'],
  [180, 'lengthwise'],
  [270, 'crosswise'],
]

/**
 * The turns of a range in which the cloth stretches enough. Off the quarters the smaller figure counts both ways;
 * if that is enough the quarters are too and the range stays whole, else only what is within `tilt` of a quarter can serve.
 */
function turnsThatStretch(
  range: TurnRange,
  { needs, tilt }: Pick<ClothRule, 'needs' | 'tilt'>,
  has: Stretch | null,
): readonly TurnRange[] {
  if (stretchServes(has, needs, 'askew')) return [range]
  return QUARTERS.filter(([, hold]) => stretchServes(has, needs, hold)).flatMap(
    ([turn]) => sharedRange(range, { turn, tilt }) ?? [],
  )
}
