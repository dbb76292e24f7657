import type { GarmentKind } from '../../src/core/garments/index.ts'
import { kindOf } from '../../src/core/garments/index.ts'
import type { Pattern, PatternPiece } from '../../src/core/patterns/pattern.ts'
import { type CheckDraft, EMPTY_DRAFT } from '../../src/ui/state/check-draft.ts'

export const CLOTH: GarmentKind = kindOf('cloth')

/** A measured remnant of 100 × 80 cm, for the pattern `bag` in size M. */
export function testDraft(change: Partial<CheckDraft> = {}): CheckDraft {
  return {
    ...EMPTY_DRAFT,
    pattern: 'bag',
    version: 'plain',
    size: 'M',
    kind: 'cloth',
    measures: { 'cloth-width': 1000, 'cloth-length': 800 },
    ...change,
  }
}

/** One square piece of the main cloth that stretches as told, and a lining in the version `lined`. */
export function testPattern(change: Partial<PatternPiece> = {}): Pattern {
  const piece: PatternPiece = {
    id: 'side',
    name: 'Side',
    role: 'main',
    copies: 1,
    mirror: 'none',
    grain: 'along',
    tilt: 0,
    needs: { across: 0, along: 0 },
    surface: 'as-panel',
    optional: false,
    shapes: {
      S: { form: 'box', width: 200, height: 200, allowance: 0 },
      M: { form: 'box', width: 300, height: 300, allowance: 0 },
    },
  }
  const lining: PatternPiece = { ...piece, id: 'lining', name: 'Lining', role: 'lining' }
  return {
    id: 'bag',
    name: 'Bag',
    about: '',
    sizes: ['S', 'M'],
    versions: [
      { id: 'plain', name: 'Plain', pieces: ['side'] },
      { id: 'lined', name: 'Lined', pieces: ['side', 'lining'] },
    ],
    pieces: [{ ...piece, ...change }, lining],
    clearance: 0,
    cautions: [],
  }
}
