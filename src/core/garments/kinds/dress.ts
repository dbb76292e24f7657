import type { Mm } from '../../base/units.ts'
import type { Point } from '../../geometry/types.ts'
import { measure } from '../body-sizes.ts'
import { boxFlaw, otherSide, type PanelDraft, type Path, rightHalf, seam, whole } from '../drafting/draft.ts'
import { acrossTape, downTape } from '../drafting/lines.ts'
import { flaredHalf } from '../drafting/skirt-block.ts'
import { sleeveFor, sleevePair } from '../drafting/sleeve-block.ts'
import {
  BACK_NECK_DEPTH,
  shoulderSlope,
  type TopFigures,
  topHalf,
  underarm,
  upperEdges,
} from '../drafting/top-block.ts'
import { bodyTapes, drawnSleeve, shoulderTape, sleeveTapes, topFigure } from '../drafting/top-figure.ts'
import type { BuiltInFlaw, GarmentKind, Measures, Traits } from '../kind.ts'
import { ZIP_WIDTH } from '../losses.ts'
import { chest, hemWidth, read, shoulderWidth, waistWidth } from './measures.ts'

/** Armhole of bodice length, neck of shoulder, depth of neck: common practice, the armhole rather too deep. */
const ARMHOLE_OF_BODICE = 0.58
const NECK_OF_SHOULDER = 0.45
const ROUND_NECK = 0.5
const DEEP_NECK = 1.2

/** A dress zip ends about here below the waist. Common practice. */
const ZIP_BELOW_WAIST = 180

export const dress: GarmentKind = {
  id: 'dress',
  measures: [
    chest(60),
    waistWidth(50),
    hemWidth((body) => body.hip * 0.75, 3000),
    measure('body-length', 350, 1600, (body) => body.backWaist + body.innerLeg * 0.75),
    measure('bodice-length', 180, 600, (body) => body.backWaist),
    shoulderWidth(-10),
    { ...measure('sleeve-length', 60, 800, (body) => body.arm * 0.4), when: 'sleeves' },
  ],
  traits: [
    { id: 'waist-seam', usual: true },
    { id: 'sleeves', usual: false },
    { id: 'deep-neck', usual: false },
    { id: 'back-seam', usual: true },
    { id: 'zip', usual: true },
  ],
  less: [['bodice-length', 'body-length']],

  figure(measures, traits) {
    const front = frontOf(measures, traits)
    const waist = waistPoint(measures)
    const sleeve = traits.sleeves ? sleeveFor(front, read(measures, 'sleeve-length'), null) : null
    const drawn = sleeve && drawnSleeve(front, sleeve.length, sleeve.cuff)
    const tapes = [
      ...bodyTapes(front).filter((tape) => tape.measure !== 'armhole-depth'),
      shoulderTape(front),
      acrossTape('waist-width', 2 * waist[0], waist[1]),
      downTape('bodice-length', [front.neckWidth / 2, front.length], front.length - waist[1]),
      ...(drawn ? sleeveTapes(drawn).slice(0, 1) : []),
    ]
    const seams = traits['waist-seam'] ? [[[-waist[0], waist[1]] as const, waist]] : []
    return topFigure(front, topHalf(front, undefined, waist), drawn, { seams, tapes })
  },

  drafts(measures, traits) {
    const front = frontOf(measures, traits)
    const back = { ...front, neckDepth: BACK_NECK_DEPTH }
    const body = traits['waist-seam']
      ? [
          whole('bodice-front', bodiceHalf(front, measures)),
          ...backs('bodice-back', bodiceHalf(back, measures), traits, 0),
          whole('skirt-front', skirtHalf(measures)),
          ...backs('skirt-back', skirtHalf(measures), traits, skirtLength(measures) - ZIP_BELOW_WAIST),
        ]
      : [
          whole('front', topHalf(front, undefined, waistPoint(measures))),
          ...backs(
            'back',
            topHalf(back, undefined, waistPoint(measures)),
            traits,
            skirtLength(measures) - ZIP_BELOW_WAIST,
          ),
        ]
    if (!traits.sleeves) return body
    return [...body, ...sleevePair(sleeveFor(front, read(measures, 'sleeve-length'), null))]
  },
}

/** One back, or two with a seam between them; the zip runs down the centre from the top to `zipEnd`. */
function backs(id: string, half: Path, traits: Traits, zipEnd: Mm): readonly PanelDraft[] {
  const top = (half.edges.at(-1) as { to: Point }).to[1]
  const bottom = Math.max(0, zipEnd)
  const zip = (left: Mm, right: Mm): readonly BuiltInFlaw[] =>
    traits.zip && bottom < top ? [boxFlaw('zip', left, bottom, right, top)] : []
  if (!traits['back-seam']) return [whole(id, half, zip(-ZIP_WIDTH, ZIP_WIDTH))]
  const right = rightHalf(`${id}-right`, half, seam, zip(0, ZIP_WIDTH))
  return [otherSide(`${id}-left`, right), right]
}

function bodiceHalf(top: TopFigures, measures: Measures): Path {
  const [x, y] = waistPoint(measures)
  const raised = { ...top, length: top.length - y }
  return { start: [0, 0], edges: [seam([x, 0]), seam(underarm(raised)), ...upperEdges(raised)] }
}

function skirtHalf(measures: Measures): Path {
  return flaredHalf({
    waist: read(measures, 'waist-width'),
    hem: read(measures, 'hem-width'),
    length: skirtLength(measures),
  })
}

function skirtLength(measures: Measures): Mm {
  return read(measures, 'body-length') - read(measures, 'bodice-length')
}

function waistPoint(measures: Measures): Point {
  return [read(measures, 'waist-width') / 2, skirtLength(measures)]
}

function frontOf(measures: Measures, traits: Traits): TopFigures {
  const shoulder = read(measures, 'shoulder-width')
  const neckWidth = shoulder * NECK_OF_SHOULDER
  const armhole = read(measures, 'bodice-length') * ARMHOLE_OF_BODICE
  return {
    chest: read(measures, 'chest'),
    hem: read(measures, 'hem-width'),
    length: read(measures, 'body-length'),
    shoulder,
    slope: shoulderSlope(armhole),
    armhole,
    neckWidth,
    neckDepth: neckWidth * (traits['deep-neck'] ? DEEP_NECK : ROUND_NECK),
  }
}
