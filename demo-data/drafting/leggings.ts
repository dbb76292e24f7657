import type { Mm } from '../../src/core/base/units.ts'
import type { Point } from '../../src/core/geometry/types.ts'
import type { NotionNeed } from '../../src/core/notions/notion.ts'
import { elasticCasing } from '../../src/core/patterns/casing.ts'
import type { OutlineShape, Pattern } from '../../src/core/patterns/pattern.ts'
import { type Body, crotchLength, GROWN, LETTERS, type Letter } from './bodies.ts'
import { casing, closed, curve, type Edge, edgeLength, HALF_WAY, hem, line, notched, solved } from './draw.ts'
import { elasticRing } from './notions.ts'
import {
  inSizes,
  KNIT_GAP,
  KNIT_HEM,
  KNIT_SEAM,
  LEAST_HEM,
  LEAST_KNIT_SEAM,
  piece,
  WORKSHOP,
} from './piece.ts'

/** Garment girth over body girth. */
const GIRTH = 0.88
const WAIST = 0.92
/** Stretch that the cloth must have along, per cent. */
const ALONG = 25
/** Garment length over body length down the leg, where little pulls. */
const LENGTH = 0.96
/** Through the crotch it may stretch by half of what the cloth gives along, for comfort (common practice). */
const CROTCH = 1 / (1 + ALONG / 2 / 100)
/** Legs cut farther off the grain twist when worn. */
const LEG_TILT = 3
const CASING = elasticCasing(25)
/** The cropped leg ends this share of the way from ankle to knee. */
const CROP = 0.62

/** Both seams of the leg are marked at the knee, the outer one at the hip too: where these edges begin. */
const KNEE = () => 0
const HIP = KNEE

/** What front and back share: the outer seam, with the waist at its end, and the leg below the knee. */
interface Leg {
  readonly ankle: Mm
  readonly knee: Mm
  readonly kneeHeight: Mm
  readonly crotchHeight: Mm
  readonly waistHeight: Mm
  /** Half the leg at crotch level, mean of front and back. */
  readonly thigh: Mm
  readonly outerWaist: Mm
}

/** Where front and back differ. */
interface Part {
  /** Centre line at the hip, counted from the outer seam. */
  readonly hipWidth: Mm
  readonly waistWidth: Mm
  /** How far the leg reaches past the centre line at the crotch. */
  readonly reach: Mm
  /** How much higher the centre is at the waist than the outer seam. */
  readonly raise: Mm
  /** Notches of its crotch seam, which is sewn to the same of the other leg. */
  readonly marks: 1 | 2
}

function front({ hip, waist }: Body): Part {
  return {
    hipWidth: (hip * GIRTH) / 4 - 8,
    waistWidth: (waist * WAIST) / 4 - 4,
    reach: hip * GIRTH * 0.028,
    raise: -8,
    marks: 1,
  }
}

function back({ hip, waist }: Body): Part {
  return {
    hipWidth: (hip * GIRTH) / 4 + 8,
    waistWidth: (waist * WAIST) / 4 + 4,
    reach: hip * GIRTH * 0.062,
    raise: 26,
    marks: 2,
  }
}

/** The waist is as high as makes the crotch seam, front and back, long enough. */
function leg(body: Body): Leg {
  const [f, b] = [front(body), back(body)]
  const crotchHeight = body.insideLeg * LENGTH
  const thigh = (f.hipWidth + f.reach + b.hipWidth + b.reach) / 4
  const upTo = (waistHeight: Mm): Leg => ({
    ankle: body.ankle / 4,
    knee: (body.knee * GIRTH) / 4,
    kneeHeight: crotchHeight * 0.57,
    crotchHeight,
    waistHeight,
    thigh,
    outerWaist: thigh - (f.hipWidth + b.hipWidth - f.waistWidth - b.waistWidth) / 4,
  })
  const points = [f, b].map((part) => crotchPoint(upTo(crotchHeight), f, part)) as [Point, Point]
  const length = (height: Mm) =>
    crotchSeam(upTo(height), f, points[0]) + crotchSeam(upTo(height), b, points[1])
  const target = crotchLength(body) * CROTCH
  return upTo(solved(length, target, crotchHeight + 150, crotchHeight + 450))
}

/** Outer seam from the knee up, the same on front and back. */
function outerSeam({ knee, kneeHeight, thigh, crotchHeight, waistHeight, outerWaist }: Leg): readonly Edge[] {
  const hip = crotchHeight + (waistHeight - crotchHeight) * 0.3
  const toHip = curve([knee + 8, kneeHeight + 110], [thigh, hip - 190], [thigh, hip], KNIT_SEAM)
  const toWaist = curve(
    [thigh, hip + 60],
    [outerWaist, waistHeight - 70],
    [outerWaist, waistHeight],
    KNIT_SEAM,
  )
  return [notched(toHip, 'outer seam', 1, KNEE), notched(toWaist, 'outer seam', 1, HIP)]
}

/** Inner seam from the crotch down to the knee; the outer seam is on the right, so this is on the left. */
function innerSeam({ knee, kneeHeight, crotchHeight }: Leg, crotch: Point): Edge {
  const drop = crotchHeight - kneeHeight
  return curve(
    [crotch[0] + (-knee - crotch[0]) * 0.55, crotch[1] - drop * 0.22],
    [-knee - 4, kneeHeight + drop * 0.35],
    [-knee, kneeHeight],
    KNIT_SEAM,
  )
}

/** The crotch point of a part, on a level that makes its inner seam as long as the front's (the back is set lower). */
function crotchPoint(all: Leg, f: Part, part: Part): Point {
  const at = (of: Part, height: Mm): Point => [all.thigh - of.hipWidth - of.reach, height]
  const length = (of: Part, height: Mm) => edgeLength(at(of, height), innerSeam(all, at(of, height)))
  const target = length(f, all.crotchHeight)
  return at(
    part,
    solved((height) => length(part, height), target, all.kneeHeight + 100, all.crotchHeight + 40),
  )
}

/** The waist and the crotch seam of a part, from the waist's outer end to the crotch point. */
function waistAndCrotch(all: Leg, part: Part, crotch: Point): readonly [Edge, Edge, Edge] {
  const centre = all.thigh - part.hipWidth
  const waist: Point = [all.outerWaist - part.waistWidth, all.waistHeight + part.raise]
  const hip: Point = [centre, crotch[1] + (waist[1] - crotch[1]) * 0.42]
  return [
    casing(waist, CASING),
    line(hip, KNIT_SEAM),
    curve(
      [centre - 2, crotch[1] + part.reach * 0.55],
      [crotch[0] + part.reach * 0.55, crotch[1] + 2],
      crotch,
      KNIT_SEAM,
    ),
  ]
}

/** Length of a part's crotch seam, from the waist's edge to the crotch point. */
function crotchSeam(all: Leg, part: Part, crotch: Point): Mm {
  const [waist, straight, bend] = waistAndCrotch(all, part, crotch)
  return edgeLength(waist.to, straight) + edgeLength(straight.to, bend)
}

function legPiece(size: Letter, part: (body: Body) => Part, from: number): OutlineShape {
  const body = GROWN[size]
  const name = part === front ? 'front' : 'back'
  const all = leg(body)
  const crotch = crotchPoint(all, front(body), part(body))
  const [waist, straight, bend] = waistAndCrotch(all, part(body), crotch)
  const height = all.kneeHeight * from
  const ankle = all.ankle + (all.knee - all.ankle) * from
  return closed(
    [-ankle, height],
    [
      hem([ankle, height], KNIT_HEM),
      line([all.knee, all.kneeHeight], KNIT_SEAM),
      ...outerSeam(all),
      waist,
      straight,
      notched(bend, `${name} crotch seam`, part(body).marks, HALF_WAY),
      innerSeam(all, crotch),
      notched(line([-ankle, height], KNIT_SEAM), 'inner seam', 1, KNEE),
    ],
  )
}

/** In a knit 0.88 of the waist (common practice: 0.85 to 0.90). */
function waistElastic(): NotionNeed {
  return elasticRing(
    LETTERS,
    { id: 'waist-elastic', name: 'Elastic for the waist', width: 25 },
    0.88,
    (size) => GROWN[size].waist,
    (size) => GROWN[size].hip,
  )
}

export function leggings(): Pattern {
  const pair = {
    copies: 2,
    mirror: 'pairs',
    needs: { across: 50, along: ALONG },
    joins: 'across',
    turnAlike: 'leg',
  } as const
  const shapes = (part: (body: Body) => Part, from: number) =>
    inSizes(LETTERS, (size) => legPiece(size, part, from))
  return {
    id: 'leggings',
    name: 'Leggings',
    about: 'Close leggings XS to XL, full length or cropped, with elastic in a casing at the waist.',
    sizes: LETTERS,
    versions: [
      { id: 'full', name: 'Full length', pieces: ['front', 'back'] },
      { id: 'cropped', name: 'Cropped', pieces: ['front-cropped', 'back-cropped'] },
    ],
    pieces: [
      piece('front', 'Front leg', shapes(front, 0), pair),
      piece('back', 'Back leg', shapes(back, 0), pair),
      piece('front-cropped', 'Front leg, cropped', shapes(front, CROP), pair),
      piece('back-cropped', 'Back leg, cropped', shapes(back, CROP), pair),
    ],
    clearance: KNIT_GAP,
    cloths: ['knit'],
    leastAllowance: LEAST_KNIT_SEAM,
    leastHem: LEAST_HEM,
    mostTilt: LEG_TILT,
    notions: [waistElastic()],
    cautions: WORKSHOP,
  }
}
