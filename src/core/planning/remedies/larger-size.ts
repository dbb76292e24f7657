import type { Stretch } from '../../base/terms.ts'
import type { Percent } from '../../base/units.ts'
import { neededStretch, turnsOn } from '../../cloth/index.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import { seamLine } from '../../patterns/index.ts'
import type { PatternPiece, PieceShape } from '../../patterns/pattern.ts'
import type { CheckQuestion } from '../check.ts'
import { askedPieces, withPieces } from './change.ts'
import type { Remedy, RemedyMaker } from './remedy.ts'
import { isShortOfStretch } from './short-of-stretch.ts'

/** Farther up, shoulders and lengths would be another person's. */
const MOST_UP = 3

/**
 * Makes a larger size for the same body, of cloth that gives less: it is wider by itself and need not stretch so far.
 *
 * In closed form, by the definition of stretch: a piece that is w wide when finished and may be stretched by n passes a
 * girth in the share w (1 + n) of it. The larger size, w′ wide, passes the same body once w′ (1 + n′) is as much, so it
 * needs n′ = w (1 + n) / w′ − 1, and nothing where it is as wide unstretched. Likewise along. Proposed are the smallest size
 * whose n′ the cloth is measured to give, and the smallest for which it does even if the gauge is off by the doubt.
 */
export const largerSize: RemedyMaker = {
  kinds: ['larger-size'],
  propose(question, answer) {
    const { stretch, surface, faces } = question.garment.cloth
    if (stretch === null || !isShortOfStretch(answer)) return []
    const cloth = { stretch, surface, faces, cloth: null }
    const sizes = largerFor(question)
    const serving = (doubt: Percent) =>
      sizes.find(({ pieces }) =>
        pieces.every(({ rule }) => {
          const asked = { ...rule, needs: raised(rule.needs, doubt), turns: null, cloth: null }
          return typeof turnsOn(asked, cloth) !== 'string'
        }),
      )
    const found = [serving(0), serving(question.stretchDoubt ?? 0)].filter((size) => size !== undefined)
    return [...new Set(found)].map((size) => remedyOf(question, size))
  },
}

function raised({ across, along }: Stretch, doubt: Percent): Stretch {
  const more = (need: Percent) => (need > 0 ? need + doubt : 0)
  return { across: more(across), along: more(along) }
}

interface Larger {
  readonly size: string
  readonly up: number
  readonly pieces: readonly { readonly id: string; readonly rule: PatternPiece }[]
}

function largerFor(question: CheckQuestion): readonly Larger[] {
  const { pattern, size } = question
  const at = pattern.sizes.indexOf(size)
  const stretched = askedPieces(question).filter(({ piece }) => needsSome(piece.needs) && !piece.optional)
  return pattern.sizes.slice(at + 1, at + 1 + MOST_UP).flatMap((larger, k): readonly Larger[] => {
    const pieces = stretched.flatMap(({ piece, shape }) => {
      const wider = piece.shapes[larger]
      return wider ? [{ id: piece.id, rule: { ...piece, needs: needsIn(piece.needs, shape, wider) } }] : []
    })
    return pieces.length === stretched.length ? [{ size: larger, up: k + 1, pieces }] : []
  })
}

function needsSome({ across, along }: Stretch): boolean {
  return across > 0 || along > 0
}

/** What the larger shape must stretch to become as large as the smaller one stretched as its maker says. */
function needsIn({ across, along }: Stretch, smaller: PieceShape, larger: PieceShape): Stretch {
  const [from, to] = [extentOf(smaller), extentOf(larger)]
  const needed = (need: number, before: number, now: number) =>
    need > 0 ? neededStretch(before * (1 + need / 100), now) : 0
  return { across: needed(across, from.width, to.width), along: needed(along, from.height, to.height) }
}

/** Finished, where it is widest and longest. */
function extentOf(shape: PieceShape): { readonly width: number; readonly height: number } {
  const { minX, maxX, minY, maxY } = polygonBox(seamLine(shape))
  return { width: maxX - minX, height: maxY - minY }
}

function remedyOf(question: CheckQuestion, { size, up, pieces }: Larger): Remedy {
  const needs = new Map(pieces.map(({ id, rule }) => [id, rule.needs]))
  const changed = withPieces(question, [...needs.keys()], (piece) => ({
    ...piece,
    needs: needs.get(piece.id) ?? piece.needs,
  }))
  const across = Math.max(...pieces.map(({ rule }) => rule.needs.across))
  const along = Math.max(...pieces.map(({ rule }) => rule.needs.along))
  return {
    steps: [
      {
        kind: 'larger-size',
        pieces: [...needs.keys()],
        size,
        up,
        body: question.size,
        needs: { across, along },
      },
    ],
    question: { ...changed, size },
  }
}
