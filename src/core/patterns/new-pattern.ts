import { copiedInNeeds, removedInNeeds, renamedInNeeds } from '../notions/need-sizes.ts'
import type { Pattern, PatternPiece, PieceShape } from './pattern.ts'
import { NO_STEP, type SizeStep, steppedShape } from './size-step.ts'

/**
 * Typing in a pattern, step by step. Every step gives a new pattern and leaves the old one alone; a pattern in the making
 * may still have faults (patternFaults).
 */

/** A pattern with one size and one version and no pieces yet. */
export function emptyPattern(id: string, size = 'one size'): Pattern {
  return {
    id,
    name: '',
    about: '',
    sizes: [size],
    versions: [{ id: 'standard', name: 'Standard', pieces: [] }],
    pieces: [],
    clearance: 4,
    cautions: [],
  }
}

/** Adds a piece that has the same shape in every size, and puts it into every version. Its id must be new. */
export function addPiece(pattern: Pattern, piece: Omit<PatternPiece, 'shapes'>, shape: PieceShape): Pattern {
  if (pattern.pieces.some(({ id }) => id === piece.id)) throw new Error(`piece ${piece.id} is there already`)
  const shapes = Object.fromEntries(pattern.sizes.map((size) => [size, shape]))
  return {
    ...pattern,
    pieces: [...pattern.pieces, { ...piece, shapes }],
    versions: pattern.versions.map((version) => ({ ...version, pieces: [...version.pieces, piece.id] })),
  }
}

/** Takes a piece out of the pattern and of all its versions. */
export function removePiece(pattern: Pattern, id: string): Pattern {
  return {
    ...pattern,
    pieces: pattern.pieces.filter((piece) => piece.id !== id),
    versions: pattern.versions.map((version) => ({
      ...version,
      pieces: version.pieces.filter((piece) => piece !== id),
    })),
  }
}

/**
 * Adds a size at the end, every piece with its shape in size `copyFrom` grown by a step across and along (0: copied), and
 * the notions as in that size.
 * The name must be new and `copyFrom` a size of the pattern.
 */
export function addSize(
  pattern: Pattern,
  name: string,
  copyFrom = pattern.sizes.at(-1),
  step: SizeStep = NO_STEP,
): Pattern {
  if (pattern.sizes.includes(name)) throw new Error(`size ${name} is there already`)
  if (copyFrom === undefined || !pattern.sizes.includes(copyFrom))
    throw new Error(`no size ${copyFrom} to copy`)
  return {
    ...pattern,
    sizes: [...pattern.sizes, name],
    pieces: pattern.pieces.map((piece) => {
      const shape = piece.shapes[copyFrom]
      return shape ? { ...piece, shapes: { ...piece.shapes, [name]: steppedShape(shape, step) } } : piece
    }),
    ...(pattern.notions && { notions: copiedInNeeds(pattern.notions, copyFrom, name) }),
  }
}

/** Takes a size away, with its shapes and its figures of notions. */
export function removeSize(pattern: Pattern, name: string): Pattern {
  return {
    ...pattern,
    sizes: pattern.sizes.filter((size) => size !== name),
    pieces: pattern.pieces.map((piece) => ({
      ...piece,
      shapes: Object.fromEntries(Object.entries(piece.shapes).filter(([size]) => size !== name)),
    })),
    ...(pattern.notions && { notions: removedInNeeds(pattern.notions, name) }),
  }
}

/** Gives a piece another shape in one size. */
export function withShape(pattern: Pattern, piece: string, size: string, shape: PieceShape): Pattern {
  return {
    ...pattern,
    pieces: pattern.pieces.map((one) =>
      one.id === piece ? { ...one, shapes: { ...one.shapes, [size]: shape } } : one,
    ),
  }
}

/** Calls a size by another name, its place and shapes kept. The name must be new. */
export function renameSize(pattern: Pattern, from: string, to: string): Pattern {
  if (pattern.sizes.includes(to)) throw new Error(`size ${to} is there already`)
  const renamed = (size: string) => (size === from ? to : size)
  return {
    ...pattern,
    sizes: pattern.sizes.map(renamed),
    pieces: pattern.pieces.map((piece) => ({
      ...piece,
      shapes: Object.fromEntries(Object.entries(piece.shapes).map(([size, shape]) => [renamed(size), shape])),
    })),
    ...(pattern.notions && { notions: renamedInNeeds(pattern.notions, from, to) }),
  }
}
