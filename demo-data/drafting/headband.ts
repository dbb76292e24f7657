import type { Mm } from '../../src/core/base/units.ts'
import type { Pattern, StripShape } from '../../src/core/patterns/pattern.ts'
import { inSizes, KNIT_GAP, KNIT_SEAM, LEAST_KNIT_SEAM, MOST_TILT, piece, WORKSHOP } from './piece.ts'

const SIZES = ['child', 'S', 'M', 'L'] as const
type Size = (typeof SIZES)[number]

/** Head girths, mm (common practice). */
const HEAD: Readonly<Record<Size, Mm>> = { child: 510, S: 540, M: 560, L: 580 }
/** Band over head girth, so that it holds. */
const RATIO = 0.9
const WIDE: Mm = 90
const NARROW: Mm = 55

function band(size: Size, height: Mm): StripShape {
  return {
    form: 'strip',
    edge: HEAD[size],
    ratio: RATIO,
    height: size === 'child' ? height * 0.8 : height,
    folded: true,
    endAllowance: KNIT_SEAM,
    sideAllowance: KNIT_SEAM,
  }
}

export function headband(): Pattern {
  // 1 / 0.9 is 11 %; twice that, for comfort.
  const needs = { across: 25, along: 0 }
  return {
    id: 'headband',
    name: 'Headband',
    about: 'A folded band of stretchy scraps, narrow or wide, for heads of 51 to 58 cm.',
    sizes: SIZES,
    versions: [
      { id: 'narrow', name: 'Narrow', pieces: ['narrow'] },
      { id: 'wide', name: 'Wide, with a loop', pieces: ['wide', 'loop'] },
    ],
    pieces: [
      piece(
        'narrow',
        'Narrow band',
        inSizes(SIZES, (size) => band(size, NARROW)),
        { needs, joins: 'along' },
      ),
      piece(
        'wide',
        'Wide band',
        inSizes(SIZES, (size) => band(size, WIDE)),
        { needs, joins: 'along' },
      ),
      piece(
        'loop',
        'Loop that gathers it',
        inSizes(SIZES, () => ({ form: 'box', width: 90, height: 60, allowance: KNIT_SEAM })),
        { grain: 'either' },
      ),
    ],
    clearance: KNIT_GAP,
    cloths: ['knit'],
    leastAllowance: LEAST_KNIT_SEAM,
    mostTilt: MOST_TILT,
    cautions: WORKSHOP,
  }
}
