import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'
import type { BuiltInFlaw } from '../kind.ts'
import { type DraftEdge, hem, type PanelDraft, seam, whole } from './draft.ts'
import { armholeLine, type TopFigures } from './top-block.ts'

/** A set-in sleeve folded flat: half-widths, as the tape reads them. */
export interface SleeveFigures {
  /** Shoulder tip to the lower edge along the fold. */
  readonly length: Mm
  readonly cap: Mm
  readonly bicep: Mm
  readonly cuff: Mm
}

/** The cap is about half the armhole's height on shirts, tees and jumpers. Common practice. */
const CAP_SHARE = 0.5

/** However short the sleeve, some of it hangs below the cap. */
const MOST_CAP_OF_LENGTH = 0.6

/**
 * A sleeve for this armhole. Its bicep follows: half the cap, from underarm to shoulder tip, is as long as the armhole's
 * straight line. `cuff` null: a short sleeve, a little narrower than the bicep.
 */
export function sleeveFor(top: TopFigures, length: Mm, cuff: Mm | null): SleeveFigures {
  const cap = Math.min(CAP_SHARE * (top.armhole - top.slope), MOST_CAP_OF_LENGTH * length)
  const bicep = Math.sqrt(armholeLine(top) ** 2 - cap ** 2)
  return { length, cap, bicep, cuff: cuff ?? bicep * 0.85 }
}

/** The sleeve opened along its underarm seam: one panel, symmetric about its own fold, +y toward the shoulder. */
export function sleevePanel(
  id: string,
  { length, cap, bicep, cuff }: SleeveFigures,
  bottom: (to: Point) => DraftEdge = hem,
  flaws: readonly BuiltInFlaw[] = [],
): PanelDraft {
  const under = length - cap
  const edges = [
    bottom([cuff, 0]),
    seam([bicep, under]),
    seam([bicep / 2, under + cap / 2], [bicep * 0.7, under + cap * 0.12]),
    seam([0, length], [bicep * 0.3, under + cap * 0.88]),
  ]
  return whole(id, { start: [0, 0], edges }, flaws)
}

/** Left and right sleeve; their cloth is alike. */
export function sleevePair(
  figures: SleeveFigures,
  bottom: (to: Point) => DraftEdge = hem,
): readonly PanelDraft[] {
  return [sleevePanel('sleeve-left', figures, bottom), sleevePanel('sleeve-right', figures, bottom)]
}
