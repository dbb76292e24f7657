import type { Pattern, PatternPiece, PieceShape } from '../../src/core/patterns/pattern.ts'

export const BOX = { form: 'box', width: 200, height: 300, allowance: 10 } as const satisfies PieceShape

/** A right piece; give what the test is about. */
export function aPiece(change: Partial<PatternPiece> = {}): PatternPiece {
  return {
    id: 'body',
    name: 'Body',
    role: 'main',
    copies: 2,
    mirror: 'none',
    grain: 'along',
    tilt: 0,
    needs: { across: 0, along: 0 },
    surface: 'as-panel',
    optional: false,
    shapes: { S: BOX, M: { ...BOX, width: 220 } },
    ...change,
  }
}

/** A right pattern of one piece in sizes S and M; give what the test is about. */
export function aPattern(change: Partial<Pattern> = {}): Pattern {
  return {
    id: 'tote',
    name: 'Tote',
    about: 'A bag of two rectangles.',
    sizes: ['S', 'M'],
    versions: [{ id: 'plain', name: 'Plain', pieces: ['body'] }],
    pieces: [aPiece()],
    clearance: 4,
    cautions: [],
    ...change,
  }
}
