import {
  addPiece,
  emptyPattern,
  type Pattern,
  type PatternPiece,
  type PieceShape,
  removePiece,
  removeSize,
  type Version,
  withShape,
} from '../../core/patterns/index.ts'
import { usedPattern } from './choose-make.ts'
import { newId } from './new-id.ts'
import { anyPatternById, patternShelf } from './patterns-state.ts'
import { blankShape, type TypedForm } from './piece-shapes.ts'
import { offerUndo } from './undo.ts'

/** Her own patterns as she types them in: every change is stored at once, and what is removed can be brought back. */

/** Cautions that hold for whatever is cut from second-hand clothes. */
const USUAL_CAUTIONS = ['unwashed', 'blades']

/** Begins a pattern and gives its id. */
export function newPattern(): string {
  const id = newId()
  patternShelf.put({ ...emptyPattern(id), cautions: USUAL_CAUTIONS })
  usedPattern(id)
  return id
}

/** A copy of her own under another name, to be changed. Gives its id. */
export function copyPattern(pattern: Pattern, name: string): string {
  const id = newId()
  patternShelf.put({ ...pattern, id, name })
  usedPattern(id)
  return id
}

/** Changes the pattern as it stands now; nothing happens if it is gone. */
export function change(id: string, to: (pattern: Pattern) => Pattern): void {
  const now = anyPatternById(id)
  if (now) patternShelf.put(to(now))
}

export function removeOwn(pattern: Pattern, said: string): void {
  patternShelf.remove(pattern.id)
  offerUndo(said, () => patternShelf.put(pattern))
}

/** Takes a pattern away that was begun and left with nothing in it. */
export function dropIfEmpty(id: string): void {
  const pattern = patternShelf.records.value.find((own) => own.id === id)
  const isEmpty = pattern?.name.trim() === '' && pattern.pieces.length === 0 && pattern.sizes.length === 1
  if (isEmpty) patternShelf.remove(id)
}

/** Adds a piece of a form, with nothing typed yet, to every version. Gives the piece's id. */
export function beginPiece(pattern: Pattern, form: TypedForm): string {
  const id = newId()
  const like = pattern.pieces.at(-1)
  const piece: Omit<PatternPiece, 'shapes'> = {
    id,
    name: '',
    role: 'main',
    copies: 1,
    mirror: 'none',
    grain: 'along',
    tilt: 0,
    // Pieces of one pattern are mostly cut from one cloth.
    needs: like?.needs ?? { across: 0, along: 0 },
    surface: 'as-panel',
    optional: false,
  }
  change(pattern.id, (now) => addPiece(now, piece, blankShape(form)))
  return id
}

export function changePiece(pattern: string, piece: string, part: Partial<PatternPiece>): void {
  change(pattern, (now) => ({
    ...now,
    pieces: now.pieces.map((each) => (each.id === piece ? { ...each, ...part } : each)),
  }))
}

/** Says of a piece that it may be cut on the bias too, or that it keeps to its grain. */
export function allowBias(pattern: string, piece: string, allowed: boolean): void {
  change(pattern, (now) => ({
    ...now,
    pieces: now.pieces.map((each) => {
      if (each.id !== piece) return each
      const { biasToo: _, ...kept } = each
      return allowed ? { ...kept, biasToo: true } : kept
    }),
  }))
}

/** Gives the piece a shape in one size, or in every size. */
export function shapePiece(pattern: string, piece: string, size: string | null, shape: PieceShape): void {
  change(pattern, (now) =>
    (size === null ? now.sizes : [size]).reduce((made, each) => withShape(made, piece, each, shape), now),
  )
}

/** Changes the shape that the piece has in each size. */
export function reshapePiece(pattern: string, piece: string, to: (shape: PieceShape) => PieceShape): void {
  change(pattern, (now) =>
    now.sizes.reduce((made, size) => {
      const shape = made.pieces.find(({ id }) => id === piece)?.shapes[size]
      return shape ? withShape(made, piece, size, to(shape)) : made
    }, now),
  )
}

export function isSameInEverySize({ shapes }: PatternPiece): boolean {
  return new Set(Object.values(shapes).map((shape) => JSON.stringify(shape))).size <= 1
}

export function dropPiece(pattern: Pattern, piece: PatternPiece, said: string): void {
  change(pattern.id, (now) => removePiece(now, piece.id))
  offerUndo(said, () =>
    change(pattern.id, (now) => ({
      ...now,
      pieces: putBack(now.pieces, piece, pattern.pieces.indexOf(piece)),
      versions: now.versions.map((version) => {
        const at = pattern.versions.find(({ id }) => id === version.id)?.pieces.indexOf(piece.id) ?? -1
        return at < 0 ? version : { ...version, pieces: putBack(version.pieces, piece.id, at) }
      }),
    })),
  )
}

export function dropSize(pattern: Pattern, size: string, said: string): void {
  change(pattern.id, (now) => removeSize(now, size))
  offerUndo(said, () =>
    change(pattern.id, (now) => ({
      ...now,
      sizes: putBack(now.sizes, size, pattern.sizes.indexOf(size)),
      pieces: now.pieces.map((piece) => {
        const shape = pattern.pieces.find(({ id }) => id === piece.id)?.shapes[size]
        return shape ? { ...piece, shapes: { ...piece.shapes, [size]: shape } } : piece
      }),
      ...(pattern.notions && { notions: pattern.notions }),
    })),
  )
}

/** Adds a version with every piece in it, and gives its id. */
export function addVersion(pattern: Pattern): string {
  const version: Version = { id: newId(), name: '', pieces: pattern.pieces.map(({ id }) => id) }
  change(pattern.id, (now) => ({ ...now, versions: [...now.versions, version] }))
  return version.id
}

export function changeVersion(pattern: string, version: string, part: Partial<Version>): void {
  change(pattern, (now) => ({
    ...now,
    versions: now.versions.map((each) => (each.id === version ? { ...each, ...part } : each)),
  }))
}

export function dropVersion(pattern: Pattern, version: Version, said: string): void {
  change(pattern.id, (now) => ({ ...now, versions: now.versions.filter(({ id }) => id !== version.id) }))
  offerUndo(said, () =>
    change(pattern.id, (now) => ({
      ...now,
      versions: putBack(now.versions, version, pattern.versions.indexOf(version)),
    })),
  )
}

/** The list with the entry at its old place, or as it is if the entry is there. */
function putBack<T>(list: readonly T[], entry: T, at: number): readonly T[] {
  return list.includes(entry) ? list : [...list.slice(0, at), entry, ...list.slice(at)]
}
