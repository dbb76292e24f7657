import type { Mm } from '../../src/core/base/units.ts'
import { neededStretch } from '../../src/core/cloth/stretch.ts'
import type { Point } from '../../src/core/geometry/types.ts'
import type { OutlineShape, Pattern, StripShape } from '../../src/core/patterns/pattern.ts'
import { GROWN, LETTERS, type Letter, shoulderGirth } from './bodies.ts'
import { curve, type Edge, edgeLength, HALF_WAY, hundredth, line, notched, onFold } from './draw.ts'
import { elasticRing } from './notions.ts'
import { inSizes, KNIT_GAP, KNIT_SEAM, LEAST_KNIT_SEAM, MOST_TILT, piece, WORKSHOP } from './piece.ts'

/** Garment girth over body girth: 10 % negative ease at the bust, less below it, where it must pass the shoulders and an elastic holds it. */
const BUST_RATIO = 0.9
const BAND_RATIO = 0.92
/** Bindings over the edges they bind, and the elastic over the body. */
const BINDING_RATIO = 0.88
/** The front is this much wider than the back, half piece each. */
const BUST_SHARE: Mm = 8
const STRAP: Mm = 42

/** Corners of half a front or back, from the side seam up to the strap. */
interface Corners {
  readonly sideBottom: Point
  readonly underarm: Point
  readonly strapOuter: Point
  readonly strapInner: Point
  readonly neck: Point
}

function corners(size: Letter, wider: Mm, strapAt: Mm, neckHeight: Mm): Corners {
  const { bust, underbust } = GROWN[size]
  const top = bust * 0.28 + 40
  return {
    sideBottom: [(underbust * BAND_RATIO) / 4 + wider, 0],
    underarm: [(bust * BUST_RATIO) / 4 + wider, bust * 0.085 + 40],
    strapOuter: [strapAt + STRAP, top],
    strapInner: [strapAt, top],
    neck: [0, neckHeight],
  }
}

function front(size: Letter): Corners {
  const { bust } = GROWN[size]
  return corners(size, BUST_SHARE, bust * 0.055 + 12, bust * 0.15 + 20)
}

/** Straps lean in to the middle of the back. */
function back(size: Letter): Corners {
  const { bust } = GROWN[size]
  return corners(size, -BUST_SHARE, bust * 0.045 + 8, bust * 0.2 + 25)
}

function frontArmhole({ underarm: [ux, uy], strapOuter: [sx, sy] }: Corners): Edge {
  return curve([ux - (ux - sx) * 0.75, uy + 4], [sx - 4, sy - (sy - uy) * 0.55], [sx, sy], KNIT_SEAM)
}

function backArmhole({ underarm: [ux, uy], strapOuter: [sx, sy] }: Corners): Edge {
  return curve([ux * 0.42, uy + 8], [sx * 0.3, sy - (sy - uy) * 0.5], [sx, sy], KNIT_SEAM)
}

function neckline({ strapInner: [sx, sy], neck: [, ny] }: Corners): Edge {
  return curve([sx - 2, sy - (sy - ny) * 0.7], [sx * 0.6, ny], [0, ny], KNIT_SEAM)
}

/** One notch in front and two at the back keep the armholes apart. */
function half(points: Corners, armhole: Edge, marks: 1 | 2): OutlineShape {
  return onFold(
    [0, 0],
    [
      line(points.sideBottom, KNIT_SEAM),
      notched(line(points.underarm, KNIT_SEAM), 'side', 1, HALF_WAY),
      notched(armhole, 'armhole', marks, HALF_WAY),
      line(points.strapInner, KNIT_SEAM),
      neckline(points),
    ],
  )
}

/** Half the band: sewn to the lower edge and folded over 35 mm elastic, which holds it; so it is as long as the edge. */
function band(size: Letter): StripShape {
  const edge = front(size).sideBottom[0] + back(size).sideBottom[0]
  return strip(edge, 1, 38)
}

function neckBinding(size: Letter): StripShape {
  const [f, b] = [front(size), back(size)]
  return strip(
    2 * (edgeLength(f.strapInner, neckline(f)) + edgeLength(b.strapInner, neckline(b))),
    BINDING_RATIO,
    10,
  )
}

function armholeBinding(size: Letter): StripShape {
  const [f, b] = [front(size), back(size)]
  const edge = edgeLength(f.underarm, frontArmhole(f)) + edgeLength(b.underarm, backArmhole(b))
  return strip(edge, BINDING_RATIO, 10)
}

function strip(edge: Mm, ratio: number, height: Mm): StripShape {
  return {
    form: 'strip',
    edge: hundredth(edge),
    ratio,
    height,
    folded: true,
    endAllowance: KNIT_SEAM,
    sideAllowance: KNIT_SEAM,
  }
}

/**
 * Worn, twice the stretch that the girth takes, for comfort (common practice); and put on, what takes its lower edge over the
 * shoulders. Rounded up to 5 %; and straps that give.
 */
function needs() {
  const most = LETTERS.map((size) => {
    const { underbust } = GROWN[size]
    const girth = underbust * BAND_RATIO
    return Math.max(2 * neededStretch(underbust, girth), neededStretch(shoulderGirth(GROWN[size]), girth))
  })
  return { across: Math.ceil(Math.max(...most) / 5) * 5, along: 20 }
}

export function sportsTop(): Pattern {
  const fronts = inSizes(LETTERS, (size) => half(front(size), frontArmhole(front(size)), 1))
  const backs = inSizes(LETTERS, (size) => half(back(size), backArmhole(back(size)), 2))
  const stretchy = { needs: needs() }
  const lining = { ...stretchy, role: 'lining', joins: 'either', turnAlike: 'lining' } as const
  // Strips stretch along themselves only, whichever way they are cut.
  const strips = { grain: 'either', needs: { ...needs(), along: 0 }, joins: 'along' } as const
  const bindings = { ...strips, biasToo: true } as const
  return {
    id: 'sports-top',
    name: 'Racer-back sports top',
    about: 'A close top of cloth that stretches both ways, XS to XL, bound or lined.',
    sizes: LETTERS,
    versions: [
      {
        id: 'bound',
        name: 'Unlined, edges bound',
        pieces: ['front', 'back', 'band', 'neck-binding', 'armhole-binding'],
      },
      { id: 'lined', name: 'Lined', pieces: ['front', 'back', 'band', 'front-lining', 'back-lining'] },
    ],
    pieces: [
      piece('front', 'Front', fronts, { ...stretchy, turnAlike: 'body' }),
      piece('back', 'Back', backs, { ...stretchy, joins: 'along', turnAlike: 'body' }),
      piece('band', 'Band', inSizes(LETTERS, band), { ...strips, copies: 2 }),
      piece('neck-binding', 'Neck binding', inSizes(LETTERS, neckBinding), bindings),
      piece('armhole-binding', 'Armhole binding', inSizes(LETTERS, armholeBinding), {
        ...bindings,
        copies: 2,
      }),
      piece('front-lining', 'Front lining', fronts, lining),
      piece('back-lining', 'Back lining', backs, lining),
    ],
    clearance: KNIT_GAP,
    cloths: ['knit'],
    leastAllowance: LEAST_KNIT_SEAM,
    mostTilt: MOST_TILT,
    notions: [
      elasticRing(
        LETTERS,
        { id: 'band-elastic', name: 'Elastic under the bust', width: 35 },
        BINDING_RATIO,
        (size) => GROWN[size].underbust,
        (size) => shoulderGirth(GROWN[size]),
      ),
    ],
    cautions: WORKSHOP,
  }
}
