import type { Mm } from '../../src/core/base/units.ts'
import type { Point } from '../../src/core/geometry/types.ts'
import type { NotionNeed } from '../../src/core/notions/notion.ts'
import { elasticCasing } from '../../src/core/patterns/casing.ts'
import type { OutlineShape, Pattern } from '../../src/core/patterns/pattern.ts'
import { seamAllowance } from '../../src/core/patterns/seams.ts'
import { crotchLength, GROWN, LETTERS, type Letter } from './bodies.ts'
import { casing, closed, curve, edgeLength, HALF_WAY, hem, line, notched, solved } from './draw.ts'
import { elasticRing } from './notions.ts'
import { inSizes, LEAST_HEM, MOST_TILT, piece, WORKSHOP, WOVEN_GAP } from './piece.ts'

/** Woven, so the hips need room to sit (common practice: 8 to 12 cm). */
const HIP_EASE: Mm = 110
/** They sit so far below the waist, front and back, and are so much longer than a fitted block through the crotch (common practice). */
const BELOW_WAIST: Mm = 30
const CROTCH_EASE: Mm = 30
const SEAM = seamAllowance('french')
/** Where a plain seam, neatened, takes the place of the French one. */
const LEAST_SEAM: Mm = 10
const HEM = seamAllowance('woven-hem')
const CASING = elasticCasing(25)
const INSIDE_LEG: Mm = 95
/** The hem runs in by this much from the crotch, front and back alike, so both inner seams are of one length. */
const TAPER: Mm = 12

/** Where the front or the back half of a leg ends; `reach` past the centre as a share of the hip girth. */
interface Half {
  readonly side: -1 | 1
  readonly reach: number
  /** How much higher the centre is at the waist than the side. */
  readonly raise: Mm
  /** How much the centre leans in at the waist. */
  readonly lean: Mm
}

const FRONT: Half = { side: -1, reach: 0.045, raise: 0, lean: 6 }
const BACK: Half = { side: 1, reach: 0.1, raise: 32, lean: 34 }

/** Corners of one half, the side line at x = 0, its top so far above the crotch. */
function corners(size: Letter, { side, reach, raise, lean }: Half, rise: Mm) {
  const { hip } = GROWN[size]
  const width = (hip + HIP_EASE) / 4
  const top = INSIDE_LEG + rise
  const tip = width + reach * hip
  const at = (x: Mm, y: Mm): Point => [side * x, y]
  const bend = reach * hip * 0.6
  return {
    hem: at(tip - TAPER, 0),
    crotch: at(tip, INSIDE_LEG),
    crotchBends: [at(tip - bend, INSIDE_LEG + 1), at(width + 1, INSIDE_LEG + bend)] as const,
    hip: at(width, INSIDE_LEG + rise * 0.42),
    waist: at(width - lean, top + raise),
    sideTop: at(0, top),
  }
}

/** Length of one half's crotch seam. */
function crotchSeam(size: Letter, half: Half, rise: Mm): Mm {
  const { crotch, crotchBends, hip, waist } = corners(size, half, rise)
  const bend = curve(crotchBends[0], crotchBends[1], hip, SEAM)
  return edgeLength(crotch, bend) + edgeLength(hip, line(waist, SEAM))
}

/** Crotch to the top at the side, as high as the crotch seam must be long. */
function riseOf(size: Letter): Mm {
  const target = crotchLength(GROWN[size]) - 2 * BELOW_WAIST + CROTCH_EASE
  return solved((rise) => crotchSeam(size, FRONT, rise) + crotchSeam(size, BACK, rise), target, 150, 450)
}

/** A whole leg, front on the left and back on the right, without a seam at the side. */
function leg(size: Letter): OutlineShape {
  const rise = riseOf(size)
  const [front, back] = [corners(size, FRONT, rise), corners(size, BACK, rise)]
  const backBend = curve(back.crotchBends[0], back.crotchBends[1], back.hip, SEAM)
  const frontBend = curve(front.crotchBends[1], front.crotchBends[0], front.crotch, SEAM)
  return closed(front.hem, [
    hem(back.hem, HEM),
    line(back.crotch, SEAM),
    notched(backBend, 'back crotch seam', 2, HALF_WAY),
    line(back.waist, SEAM),
    casing(back.sideTop, CASING),
    casing(front.waist, CASING),
    line(front.hip, SEAM),
    notched(frontBend, 'front crotch seam', 1, HALF_WAY),
    line(front.hem, SEAM),
  ])
}

/** Firm woven elastic, 0.90 of the waist (common practice: 0.90 to 0.95). */
function waistElastic(): NotionNeed {
  return elasticRing(
    LETTERS,
    { id: 'waist-elastic', name: 'Elastic for the waist', width: 25 },
    0.9,
    (size) => GROWN[size].waist,
    (size) => GROWN[size].hip,
  )
}

export function boxerShorts(): Pattern {
  return {
    id: 'boxer-shorts',
    name: 'Boxer shorts',
    about:
      'Loose shorts of light woven cloth, XS to XL, one piece a leg, elastic in a casing; with or without a pocket.',
    sizes: LETTERS,
    versions: [
      { id: 'plain', name: 'Plain', pieces: ['leg'] },
      { id: 'pocket', name: 'With a back pocket', pieces: ['leg', 'pocket'] },
    ],
    pieces: [
      piece('leg', 'Leg', inSizes(LETTERS, leg), { copies: 2, mirror: 'pairs', joins: 'along' }),
      piece(
        'pocket',
        'Pocket',
        inSizes(LETTERS, () => ({
          form: 'box',
          width: 120,
          height: 130,
          allowance: seamAllowance('lining'),
        })),
        { role: 'contrast' },
      ),
    ],
    clearance: WOVEN_GAP,
    cloths: ['woven'],
    leastAllowance: LEAST_SEAM,
    leastHem: LEAST_HEM,
    mostTilt: MOST_TILT,
    notions: [waistElastic()],
    cautions: WORKSHOP,
  }
}
