import type { Mm } from '../../base/units.ts'
import { polygonBox } from '../../geometry/polygon.ts'
import { allowancesOf } from '../../patterns/change-allowances.ts'
import { cutOutline } from '../../patterns/cut-outline.ts'
import type { PatternPiece, PieceShape, Version } from '../../patterns/pattern.ts'
import type { PieceInSize } from '../../patterns/pieces-of.ts'
import { type SplitShape, splitShape } from '../../patterns/split-shape.ts'
import type { CheckAnswer, CheckQuestion } from '../check.ts'
import { askedPieces, cutArea, withPattern } from './change.ts'
import type { Remedy, RemedyMaker } from './remedy.ts'

/** Where the line may run, as shares of the cut piece: half-way first, for it makes the smallest parts. */
const SHARES = { across: [1 / 2, 1 / 3, 2 / 3], along: [1 / 2] } as const

const PARTS = { across: ['lower', 'upper'], along: ['left', 'right'] } as const

/** More pieces, the likeliest to be in the way, would take too long to solve. */
const MOST_PIECES = 3

/** Allowance of a join in a piece that has no seam of its own to go by, mm (common practice: 3/8 in). */
const USUAL_ALLOWANCE: Mm = 10

/** Cuts one piece in two where its maker allows it. Pieces that the answer names or leaves out come first, then large ones. */
export const join: RemedyMaker = {
  kinds: ['join'],
  propose(question, answer) {
    const joinable = askedPieces(question).filter(({ piece }) => piece.joins && !piece.optional)
    return joinable
      .sort((a, b) => Number(isNamed(b, answer)) - Number(isNamed(a, answer)) || cutArea(b) - cutArea(a))
      .slice(0, MOST_PIECES)
      .flatMap((asked) => joinsOf(asked, question))
  },
}

function isNamed({ piece: { id } }: PieceInSize, { lay }: CheckAnswer): boolean {
  if (lay.reason) return lay.reason.pieces.includes(id)
  return lay.leftOut.some((copy) => copy.startsWith(`${id}#`))
}

function joinsOf({ piece }: PieceInSize, question: CheckQuestion): readonly Remedy[] {
  const ways = (['across', 'along'] as const).filter((way) => piece.joins === way || piece.joins === 'either')
  return ways.flatMap((way) => SHARES[way].flatMap((share) => joinAt(piece, way, share, question) ?? []))
}

/** The piece joined at the same share of every size, or null where some size does not part in two. */
function joinAt(
  piece: PatternPiece,
  way: 'across' | 'along',
  share: number,
  question: CheckQuestion,
): Remedy | null {
  const allowance = joinAllowance(piece.shapes[question.size] as PieceShape)
  const splits = Object.entries(piece.shapes).map(([size, shape]) => {
    const [low, high] = extent(shape, way)
    return [size, splitShape(shape, { way, at: low + share * (high - low) }, allowance)] as const
  })
  if (splits.some(([, split]) => split === null)) return null
  const bySize = Object.fromEntries(splits) as Readonly<Record<string, SplitShape>>
  const parts = PARTS[way].map((name) => `${piece.id}/${name}`) as [string, string]
  const [low, high] = extent(piece.shapes[question.size] as PieceShape, way)
  return {
    steps: [
      {
        kind: 'join',
        piece: piece.id,
        way,
        at: share * (high - low),
        seam: (bySize[question.size] as SplitShape).seam,
        allowance,
        copies: piece.copies,
        parts,
      },
    ],
    question: withParts(question, piece, [partOf(piece, way, 0, bySize), partOf(piece, way, 1, bySize)]),
  }
}

function extent(shape: PieceShape, way: 'across' | 'along'): readonly [Mm, Mm] {
  const { minX, maxX, minY, maxY } = polygonBox(cutOutline(shape))
  return way === 'across' ? [minY, maxY] : [minX, maxX]
}

/** As wide as the piece's widest seam. */
function joinAllowance(shape: PieceShape): Mm {
  const widest = Math.max(...allowancesOf(shape).map(({ width, use }) => (use === 'seam' ? width : 0)))
  return widest > 0 ? widest : USUAL_ALLOWANCE
}

/** Grain, stretch, pile, copies and pairs are the whole piece's; a part is not joined again. */
function partOf(
  piece: PatternPiece,
  way: 'across' | 'along',
  which: 0 | 1,
  splits: Readonly<Record<string, SplitShape>>,
): PatternPiece {
  const { joins: _, ...rest } = piece
  const name = PARTS[way][which]
  const shapes = Object.entries(splits).map(
    ([size, split]) => [size, which === 0 ? split.first : split.second] as const,
  )
  return {
    ...rest,
    // Both parts are worn side by side.
    turnAlike: piece.turnAlike ?? piece.id,
    id: `${piece.id}/${name}`,
    name: `${piece.name} (${name})`,
    shapes: Object.fromEntries(shapes),
  }
}

function withParts(
  question: CheckQuestion,
  { id }: PatternPiece,
  parts: readonly [PatternPiece, PatternPiece],
): CheckQuestion {
  const { pieces, versions } = question.pattern
  const ids = parts.map((part) => part.id)
  const parted = (version: Version): Version => ({
    ...version,
    pieces: version.pieces.flatMap((piece) => (piece === id ? ids : [piece])),
  })
  return withPattern(question, {
    pieces: pieces.flatMap((piece) => (piece.id === id ? parts : [piece])),
    versions: versions.map(parted),
  })
}
