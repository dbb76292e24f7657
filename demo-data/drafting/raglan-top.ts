import type { Mm, Percent } from '../../src/core/base/units.ts'
import { neededStretch } from '../../src/core/cloth/stretch.ts'
import type { Point } from '../../src/core/geometry/types.ts'
import type { OutlineShape, Pattern, StripShape } from '../../src/core/patterns/pattern.ts'
import { CHILDREN, HEIGHTS, type Height } from './bodies.ts'
import {
  closed,
  curve,
  type Edge,
  edgeLength,
  HALF_WAY,
  hem,
  hundredth,
  line,
  notched,
  onFold,
  solved,
} from './draw.ts'
import {
  inSizes,
  KNIT_GAP,
  KNIT_HEM,
  KNIT_SEAM,
  LEAST_HEM,
  LEAST_KNIT_SEAM,
  MOST_TILT,
  piece,
  WORKSHOP,
} from './piece.ts'

/** Ease round the chest, a comfortable knit top (common practice: 5 to 12 cm). */
const CHEST_EASE: Mm = 80
const ARM_EASE: Mm = 75
const CUFF_EASE: Mm = 45
const SHORT_SLEEVE: Mm = 65
const BAND_RATIO = 0.9

/** Where the raglan seam is marked, as a share of it from the underarm. */
const RAGLAN_MARK = 0.4

/** Half the front or back: where its neckline meets the sleeve, and how low it dips at the centre. */
interface Half {
  readonly neckAt: Point
  readonly dip: Mm
}

function underarm(size: Height): Point {
  const { chest, side } = CHILDREN[size]
  return [(chest + CHEST_EASE) / 4, side]
}

function front(size: Height): Half {
  const { chest, side, scye } = CHILDREN[size]
  return { neckAt: [chest / 18 + 32, side + scye + 12], dip: 48 }
}

function back(size: Height): Half {
  const { chest, side, scye } = CHILDREN[size]
  return { neckAt: [chest / 18 + 28, side + scye + 30], dip: 14 }
}

/** The raglan line, underarm to neck, bent a little towards the sleeve. */
function raglanEdge(from: Point, to: Point): Edge {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  return curve(
    [from[0] + dx * 0.45, from[1] + dy * 0.2],
    [from[0] + dx * 0.72, from[1] + dy * 0.6],
    to,
    KNIT_SEAM,
  )
}

function neckEdge({ neckAt: [x, y], dip }: Half): Edge {
  return curve([x * 0.92, y - dip * 0.75], [x * 0.55, y - dip], [0, y - dip], KNIT_SEAM)
}

/** Marked once in front and twice at the back, as the sleeve's edges are. */
function body(size: Height, half: Half, marks: 1 | 2): OutlineShape {
  const under = underarm(size)
  const raglan = notched(
    raglanEdge(under, half.neckAt),
    'raglan seam',
    marks,
    (length) => length * RAGLAN_MARK,
  )
  return onFold(
    [0, 0],
    [
      hem([under[0], 0], KNIT_HEM),
      notched(line(under, KNIT_SEAM), 'side', 1, HALF_WAY),
      raglan,
      neckEdge(half),
    ],
  )
}

/** Width of the sleeve's top at the neck, front part and back part of it. */
const SLEEVE_TOP: Mm = 30

/** The sleeve's raglan edge, bent the other way, as high as makes it as long as the body's. */
function sleeveEdge(size: Height, half: Half, bicep: Mm): Edge {
  const under = underarm(size)
  const target = edgeLength(under, raglanEdge(under, half.neckAt))
  const edge = (height: Mm): Edge =>
    curve(
      [bicep - (bicep - SLEEVE_TOP) * 0.45, height * 0.18],
      [SLEEVE_TOP + (bicep - SLEEVE_TOP) * 0.22, height * 0.55],
      [SLEEVE_TOP, height],
      KNIT_SEAM,
    )
  return edge(solved((height) => edgeLength([bicep, 0], edge(height)), target, 20, 400))
}

/** Back edge on the right, front edge on the left, which only their notches tell apart at a glance; the top slopes down to the front. */
function sleeve(size: Height, length: Mm): OutlineShape {
  const { upperArm, wrist, underarm: whole } = CHILDREN[size]
  const bicep = (upperArm + ARM_EASE) / 2
  const cuff = bicep + (((wrist + CUFF_EASE) / 2 - bicep) * length) / whole
  const [backEdge, frontEdge] = [sleeveEdge(size, back(size), bicep), sleeveEdge(size, front(size), bicep)]
  const [first, second] = frontEdge.curve as readonly [Point, Point]
  const frontDown = curve(mirrored(second), mirrored(first), [-bicep, 0], KNIT_SEAM)
  return closed(
    [-cuff, -length],
    [
      hem([cuff, -length], KNIT_HEM),
      line([bicep, 0], KNIT_SEAM),
      notched(backEdge, 'back raglan seam', 2, (length) => length * RAGLAN_MARK),
      line(mirrored(frontEdge.to), KNIT_SEAM),
      notched(frontDown, 'front raglan seam', 1, (length) => length * (1 - RAGLAN_MARK)),
      line([-cuff, -length], KNIT_SEAM),
    ],
  )
}

function mirrored([x, y]: Point): Point {
  return [-x, y]
}

/** Neck seam all round: both necklines and the tops of both sleeves. */
function neckSeam(size: Height): Mm {
  const bicep = (CHILDREN[size].upperArm + ARM_EASE) / 2
  const [backTop, frontTop] = [
    sleeveEdge(size, back(size), bicep).to,
    mirrored(sleeveEdge(size, front(size), bicep).to),
  ]
  const top = Math.hypot(backTop[0] - frontTop[0], backTop[1] - frontTop[1])
  const neck = (half: Half) => edgeLength(half.neckAt, neckEdge(half))
  return 2 * (neck(front(size)) + neck(back(size)) + top)
}

function neckband(size: Height): StripShape {
  return {
    form: 'strip',
    edge: hundredth(neckSeam(size)),
    ratio: BAND_RATIO,
    height: 20,
    folded: true,
    endAllowance: KNIT_SEAM,
    sideAllowance: KNIT_SEAM,
  }
}

/** The band must stretch over the head; the neck seam too, in every size. Rounded up to 5 %. */
function toPassTheHead(ratio: number): Percent {
  const needs = HEIGHTS.map((size) => neededStretch(CHILDREN[size].head, neckSeam(size) * ratio))
  return Math.ceil(Math.max(...needs) / 5) * 5
}

export function raglanTop(): Pattern {
  const needs = { across: Math.max(20, toPassTheHead(1)), along: 0 }
  const sleeves = { copies: 2, mirror: 'pairs', needs, joins: 'across' } as const
  return {
    id: 'raglan-top',
    name: 'Raglan top',
    about: 'A knit top for children of 104 to 140 cm, with short or long raglan sleeves and a neckband.',
    sizes: HEIGHTS,
    versions: [
      { id: 'short', name: 'Short sleeves', pieces: ['front', 'back', 'sleeve-short', 'neckband'] },
      { id: 'long', name: 'Long sleeves', pieces: ['front', 'back', 'sleeve-long', 'neckband'] },
    ],
    pieces: [
      piece(
        'front',
        'Front',
        inSizes(HEIGHTS, (size) => body(size, front(size), 1)),
        { needs, joins: 'across', turnAlike: 'body' },
      ),
      piece(
        'back',
        'Back',
        inSizes(HEIGHTS, (size) => body(size, back(size), 2)),
        { needs, joins: 'either', turnAlike: 'body' },
      ),
      piece(
        'sleeve-short',
        'Short sleeve',
        inSizes(HEIGHTS, (size) => sleeve(size, SHORT_SLEEVE)),
        sleeves,
      ),
      piece(
        'sleeve-long',
        'Long sleeve',
        inSizes(HEIGHTS, (size) => sleeve(size, CHILDREN[size].underarm)),
        sleeves,
      ),
      piece('neckband', 'Neckband', inSizes(HEIGHTS, neckband), {
        needs: { across: toPassTheHead(BAND_RATIO), along: 0 },
        biasToo: true,
        joins: 'along',
      }),
    ],
    clearance: KNIT_GAP,
    cloths: ['knit'],
    leastAllowance: LEAST_KNIT_SEAM,
    leastHem: LEAST_HEM,
    mostTilt: MOST_TILT,
    cautions: ['child-cords', 'sleepwear-flame', ...WORKSHOP],
  }
}
