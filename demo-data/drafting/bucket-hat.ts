import type { Mm } from '../../src/core/base/units.ts'
import type { OutlineShape, Pattern, PieceShape } from '../../src/core/patterns/pattern.ts'
import { hundredth } from './draw.ts'
import { bySize } from './notions.ts'
import { inSizes, LEAST_WOVEN_SEAM, LINING_SEAM, piece, WORKSHOP, WOVEN_GAP } from './piece.ts'
import { sectorOf, sectorShape } from './sector.ts'

const SIZES = ['S', 'M', 'L', 'XL'] as const
type Size = (typeof SIZES)[number]

/** Head girths, mm; hats go in steps of 2 cm (common practice). */
const HEAD: Readonly<Record<Size, Mm>> = { S: 540, M: 560, L: 580, XL: 600 }
const EASE: Mm = 10
/** The crown is this much smaller round than the head. */
const TAPER: Mm = 70
const SIDE_HEIGHT: Mm = 88
const BRIM_WIDTH: Mm = 62
/** Half the brim's outer edge is this much longer than its inner one. */
const BRIM_FLARE: Mm = 88

const ALLOWANCES = { inner: LINING_SEAM, outer: LINING_SEAM, ends: LINING_SEAM }

function girth(size: Size): Mm {
  return HEAD[size] + EASE
}

function crown(size: Size): PieceShape {
  return { form: 'circle', diameter: hundredth((girth(size) - TAPER) / Math.PI), allowance: LINING_SEAM }
}

/** Half the side: a cone from the head up to the crown. */
function side(size: Size): OutlineShape {
  return sectorShape(sectorOf((girth(size) - TAPER) / 2, girth(size) / 2, SIDE_HEIGHT), ALLOWANCES)
}

/** Half the brim: a flat cone from the head down. */
function brim(size: Size): OutlineShape {
  return sectorShape(sectorOf(girth(size) / 2, girth(size) / 2 + BRIM_FLARE, BRIM_WIDTH), ALLOWANCES)
}

export function bucketHat(): Pattern {
  const [crowns, sides, brims] = [inSizes(SIZES, crown), inSizes(SIZES, side), inSizes(SIZES, brim)]
  const round = { grain: 'any', tilt: 0 } as const
  const two = { copies: 2, grain: 'either', joins: 'along' } as const
  const lining = { role: 'lining' } as const
  return {
    id: 'bucket-hat',
    name: 'Bucket hat',
    about: 'A hat of firm woven cloth for heads of 54 to 60 cm, plain or reversible.',
    sizes: SIZES,
    versions: [
      { id: 'plain', name: 'Plain, brim of two layers', pieces: ['crown', 'side', 'brim', 'brim-under'] },
      {
        id: 'reversible',
        name: 'Lined, to wear either way out',
        pieces: ['crown', 'side', 'brim', 'crown-lining', 'side-lining', 'brim-lining'],
      },
    ],
    pieces: [
      piece('crown', 'Crown', crowns, round),
      piece('side', 'Side', sides, two),
      piece('brim', 'Brim', brims, two),
      piece('brim-under', 'Under brim', brims, two),
      piece('crown-lining', 'Crown lining', crowns, { ...round, ...lining, joins: 'along' }),
      piece('side-lining', 'Side lining', sides, { ...two, ...lining }),
      piece('brim-lining', 'Brim lining', brims, { ...two, ...lining }),
    ],
    clearance: WOVEN_GAP,
    cloths: ['woven'],
    leastAllowance: LEAST_WOVEN_SEAM,
    mostTilt: 10,
    notions: [
      {
        id: 'inner-band',
        kind: 'ribbon',
        name: 'Ribbon round the inside',
        width: 25,
        amount: { form: 'formula', each: 1, edge: bySize(SIZES, (size) => HEAD[size]), ratio: 1, extra: 20 },
        versions: ['plain'],
      },
    ],
    cautions: WORKSHOP,
  }
}
