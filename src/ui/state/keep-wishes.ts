import type { Mm } from '../../core/base/units.ts'
import { type FlawShape, shapeOutlines } from '../../core/garments/index.ts'
import type { Point } from '../../core/geometry/types.ts'
import { hasStraightHem } from '../../core/patterns/hem-edges.ts'
import type { Pattern, PatternPiece } from '../../core/patterns/pattern.ts'
import type { MotifPlace } from '../../core/planning/motif-places.ts'
import type { MotifWish } from '../../core/planning/motif-wish.ts'
import type { CheckDraft } from './check-draft.ts'

/** A print of the garment that some piece shall show, as framed on its panel. */
export interface FramedPrint {
  readonly panel: string
  readonly frame: Frame
  readonly piece: string
  readonly place: MotifPlace
  readonly anyWayUp: boolean
  readonly within: Mm
}

export type Frame = Extract<FlawShape, { form: 'box' }>

/** The print's id among the marks of a drawing; marks of flaws have ids by chance. */
export const PRINT = 'print'

/** About the size of a chest print. */
const NEW_FRAME: Mm = 120
/** Off by so much, a print still looks as if it were meant to be there. */
const USUAL_WITHIN: Mm = 20

/** A frame of usual size round a point of the panel, to be shown anywhere on the piece. */
export function newPrint(panel: string, [x, y]: Point, piece: string): FramedPrint {
  const half = NEW_FRAME / 2
  const frame: Frame = { form: 'box', from: [x - half, y - half], to: [x + half, y + half] }
  return { panel, frame, piece, place: 'anywhere', anyWayUp: false, within: USUAL_WITHIN }
}

/** What the check asks to be kept. A frame without area asks nothing. */
export function wishesOf({ ownHem, print }: CheckDraft): {
  readonly ownHem?: readonly string[]
  readonly motif?: MotifWish
} {
  const [outline] = print ? shapeOutlines(print.frame) : []
  return {
    ...(ownHem.length > 0 ? { ownHem } : {}),
    ...(print && outline
      ? {
          motif: {
            panel: print.panel,
            outline,
            piece: print.piece,
            place: print.place,
            anyWayUp: print.anyWayUp,
            within: print.within,
          },
        }
      : {}),
  }
}

/** The pieces of the version that come from this garment. */
export function piecesHere(pattern: Pattern, { version, otherRoles }: CheckDraft): readonly PatternPiece[] {
  const wanted = pattern.versions.find(({ id }) => id === version)?.pieces ?? []
  return pattern.pieces.filter(({ id, role }) => wanted.includes(id) && !otherRoles.includes(role))
}

/** Those of them that may take over a hem of the garment. */
export function hemPieces(pattern: Pattern, draft: CheckDraft): readonly PatternPiece[] {
  return piecesHere(pattern, draft).filter(({ shapes }) => {
    const shape = shapes[draft.size]
    return shape !== undefined && hasStraightHem(shape)
  })
}
