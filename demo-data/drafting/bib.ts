import type { Mm } from '../../src/core/base/units.ts'
import { polygonPerimeter } from '../../src/core/geometry/polygon.ts'
import type { OutlineShape, Pattern } from '../../src/core/patterns/pattern.ts'
import { seamLine } from '../../src/core/patterns/seam-line.ts'
import { seamAllowance } from '../../src/core/patterns/seams.ts'
import { curve, type Edge, edgeLength, line, onFold, solved } from './draw.ts'
import { bySize, many } from './notions.ts'
import { inSizes, LEAST_KNIT_SEAM, piece, WORKSHOP, WOVEN_GAP } from './piece.ts'

const SIZES = ['56', '68', '80', '92'] as const
type Size = (typeof SIZES)[number]

/** Neck girths by height in cm, mm (common practice), and the bib's depth below the neck. */
const NECK: Readonly<Record<Size, Mm>> = { '56': 230, '68': 245, '80': 260, '92': 270 }
const DEPTH: Readonly<Record<Size, Mm>> = { '56': 110, '68': 135, '80': 160, '92': 185 }
const EASE: Mm = 30
/** Worn, the tabs cross at the nape by this much, for a press stud or a hook-and-loop patch; no cord. */
const OVERLAP: Mm = 36
const TAB: Mm = 34
/** Half the gap between the tabs' finished ends as cut; their allowances must not meet in it. */
const HALF_GAP: Mm = 9
const SEAM = seamAllowance('overlocked')

/** Half the neck, from the tab's end to the middle of the front. */
function neckEdges(radius: Mm, allowance: Mm): readonly [Edge, Edge] {
  return [
    curve([radius * 0.66, radius * 0.98], [radius, radius * 0.56], [radius, 0], allowance),
    curve([radius, -radius * 0.56], [radius * 0.56, -radius], [0, -radius], allowance),
  ]
}

/** As wide as makes the neck's edge, the gap between the tabs not counted, long enough to close with the overlap. */
function neckRadius(size: Size): Mm {
  const half = (radius: Mm) => {
    const [back, front] = neckEdges(radius, 0)
    return edgeLength([HALF_GAP, radius], back) + edgeLength(back.to, front)
  }
  return solved(half, (NECK[size] + EASE + OVERLAP) / 2, 20, 120)
}

/** Half on the fold: round the outside from the lower middle to the tab's end, then back along the neck. */
function bib(size: Size, allowance: Mm): OutlineShape {
  const neck = neckRadius(size)
  const side = neck + 52 + DEPTH[size] * 0.1
  const low = -neck - DEPTH[size]
  const nape = neck + TAB
  return onFold(
    [0, low],
    [
      curve([side * 0.75, low], [side, low * 0.75], [side, low * 0.3], allowance),
      curve([side, neck * 0.9], [side * 0.72, nape], [HALF_GAP, nape], allowance),
      line([HALF_GAP, neck], allowance),
      ...neckEdges(neck, allowance),
    ],
  )
}

/** Once round, and 20 mm to turn in at the join; up to the next centimetre. */
function bindingLength(size: Size): Mm {
  return Math.ceil((polygonPerimeter(seamLine(bib(size, 0))) + 20) / 10) * 10
}

export function babyBib(): Pattern {
  const turned = inSizes(SIZES, (size) => bib(size, SEAM))
  const loose = { grain: 'either', tilt: 5 } as const
  return {
    id: 'baby-bib',
    name: 'Baby bib',
    about:
      'A round bib from scraps for babies of 56 to 92 cm, closed at the nape by a stud or a patch, never by a cord.',
    sizes: SIZES,
    versions: [
      { id: 'backed', name: 'Two layers', pieces: ['bib', 'bib-back'] },
      { id: 'single', name: 'One layer, edge bound', pieces: ['bib-bound'] },
    ],
    pieces: [
      piece('bib', 'Bib', turned, loose),
      piece('bib-back', 'Bib, back', turned, { ...loose, role: 'lining', joins: 'either' }),
      piece(
        'bib-bound',
        'Bib without allowance',
        inSizes(SIZES, (size) => bib(size, 0)),
        loose,
      ),
    ],
    clearance: WOVEN_GAP,
    cloths: ['woven', 'knit'],
    leastAllowance: LEAST_KNIT_SEAM,
    mostTilt: 10,
    notions: [
      { id: 'stud', kind: 'other', name: 'Press stud', width: null, amount: many(SIZES, 1) },
      {
        id: 'binding',
        kind: 'binding',
        name: 'Binding round the edge',
        width: 10,
        amount: { form: 'table', each: 1, length: bySize(SIZES, bindingLength) },
        versions: ['single'],
      },
    ],
    cautions: ['child-cords', 'small-parts', ...WORKSHOP],
  }
}
