import type { Mm } from '../../src/core/base/units.ts'
import { circleSkirtRadius } from '../../src/core/patterns/circle-skirt.ts'
import type { OutlineShape, Pattern, StripShape } from '../../src/core/patterns/pattern.ts'
import { seamAllowance } from '../../src/core/patterns/seams.ts'
import { seamRing } from '../../src/core/patterns/unfold.ts'
import { GROWN, LETTERS, type Letter } from './bodies.ts'
import { hundredth } from './draw.ts'
import { many } from './notions.ts'
import {
  inSizes,
  LEAST_WOVEN_SEAM,
  LINING_SEAM,
  MOST_TILT,
  NARROW_HEM,
  piece,
  WORKSHOP,
  WOVEN_GAP,
} from './piece.ts'
import { sectorShape } from './sector.ts'

const WAIST_EASE: Mm = 15
/** Half a circle in six gores, for no ordinary garment holds it whole. */
const GORES = 6
/** Curved edges are turned narrower than straight ones (common practice: 1/4 in, or rolled). */
const LEAST_CURVED_HEM: Mm = 7
/** At both edges of the zip, in the side seam of one front and one back gore. */
const ZIP_SEAM = seamAllowance('woven')
const ZIP: Mm = 200
/** The back of the waistband reaches under the front by this much, for the hook and bar (common practice: 25 to 40 mm). */
const UNDERLAP: Mm = 30
const SHORT: Mm = 400
const KNEE: Mm = 560

function waistSeam(size: Letter): Mm {
  return GROWN[size].waist + WAIST_EASE
}

function gore(size: Letter, length: Mm): OutlineShape {
  const inner = circleSkirtRadius(waistSeam(size), 0.5)
  const allowances = { inner: LINING_SEAM, outer: NARROW_HEM, ends: LINING_SEAM, outerUse: 'hem' } as const
  return sectorShape({ inner, outer: inner + length, angle: Math.PI / GORES }, allowances, 'side')
}

/** A gore with the zip along its right edge, marked where the zip ends below the waist; of a pair, the other has it on the left. */
function zipGore(size: Letter, length: Mm): OutlineShape {
  const ring = seamRing(gore(size, length))
  const right = ring.findIndex(({ curve }) => !curve)
  const points = ring.map((point, k) =>
    k === right
      ? {
          ...point,
          allowance: ZIP_SEAM,
          fixed: true as const,
          name: 'zip side',
          notches: [{ at: length - ZIP, count: 1 as const }],
        }
      : point,
  )
  return { form: 'outline', points, onFold: false }
}

/** Half the waistband, joined at the right side, hooked at the left. */
function waistband(size: Letter): StripShape {
  return {
    form: 'strip',
    edge: hundredth(waistSeam(size) / 2),
    ratio: 1,
    height: 32,
    folded: true,
    endAllowance: LINING_SEAM,
    sideAllowance: LINING_SEAM,
  }
}

export function halfCircleSkirt(): Pattern {
  const gores = { copies: GORES - 2, joins: 'across' } as const
  const zipGores = { copies: 2, mirror: 'pairs', joins: 'across' } as const
  const bands = { grain: 'either', joins: 'along' } as const
  return {
    id: 'half-circle-skirt',
    name: 'Half-circle skirt',
    about:
      'A swinging skirt in six gores, XS to XL, short or to the knee, with a waistband and a zip at the side.',
    sizes: LETTERS,
    versions: [
      { id: 'short', name: 'Short', pieces: ['gore-short', 'gore-short-zip', 'waistband', 'waistband-back'] },
      {
        id: 'knee',
        name: 'To the knee',
        pieces: ['gore-knee', 'gore-knee-zip', 'waistband', 'waistband-back'],
      },
    ],
    pieces: [
      piece(
        'gore-short',
        'Gore, short',
        inSizes(LETTERS, (size) => gore(size, SHORT)),
        gores,
      ),
      piece(
        'gore-short-zip',
        'Gore beside the zip, short',
        inSizes(LETTERS, (size) => zipGore(size, SHORT)),
        zipGores,
      ),
      piece(
        'gore-knee',
        'Gore, to the knee',
        inSizes(LETTERS, (size) => gore(size, KNEE)),
        gores,
      ),
      piece(
        'gore-knee-zip',
        'Gore beside the zip, to the knee',
        inSizes(LETTERS, (size) => zipGore(size, KNEE)),
        zipGores,
      ),
      piece('waistband', 'Front waistband', inSizes(LETTERS, waistband), bands),
      piece(
        'waistband-back',
        'Back waistband',
        inSizes(LETTERS, (size) => ({ ...waistband(size), lap: UNDERLAP })),
        bands,
      ),
    ],
    clearance: WOVEN_GAP,
    cloths: ['woven', 'stretch-woven'],
    leastAllowance: LEAST_WOVEN_SEAM,
    leastHem: LEAST_CURVED_HEM,
    mostTilt: MOST_TILT,
    notions: [
      { id: 'zip', kind: 'zip', name: 'Zip for the side', width: ZIP, amount: many(LETTERS, 1) },
      {
        id: 'hook',
        kind: 'hook',
        name: 'Hook and bar for the waistband',
        width: null,
        amount: many(LETTERS, 1),
      },
    ],
    cautions: WORKSHOP,
  }
}
