import { hem, seam, whole } from '../drafting/draft.ts'
import { sleeveFor, sleevePair } from '../drafting/sleeve-block.ts'
import {
  BACK_NECK_DEPTH,
  openedTube,
  shoulderSlope,
  type TopFigures,
  topHalf,
} from '../drafting/top-block.ts'
import { bodyTapes, drawnSleeve, shoulderTape, sleeveTapes, topFigure } from '../drafting/top-figure.ts'
import type { GarmentKind, Measures, Traits } from '../kind.ts'
import { RIB_DEPTH } from '../losses.ts'
import {
  armholeDepth,
  bodyLength,
  chest,
  cuffWidth,
  hemWidth,
  read,
  shoulderWidth,
  sleeveLength,
} from './measures.ts'

/** Neck width of shoulder width, and depth of width for a round neck and a V or scoop. Common practice. */
const NECK_OF_SHOULDER = 0.42
const ROUND_NECK = 0.5
const DEEP_NECK = 1.2

/** Chest ease of a jumper, 100 mm. Common practice. */
const EASE = 100

export const longSleevedTop: GarmentKind = {
  id: 'long-sleeved-top',
  measures: [
    chest(EASE),
    hemWidth((body) => body.chest / 2 + 30),
    bodyLength(1.6),
    shoulderWidth(40),
    armholeDepth(EASE),
    sleeveLength(1),
    cuffWidth((body) => body.chest * 0.1),
  ],
  traits: [
    { id: 'side-seams', usual: true },
    { id: 'deep-neck', usual: false },
    { id: 'rib-bands', usual: false },
  ],
  less: [['armhole-depth', 'body-length']],

  figure(measures, traits) {
    const front = frontOf(measures, traits)
    const drawn = drawnSleeve(front, read(measures, 'sleeve-length'), read(measures, 'cuff-width'))
    const tapes = [...bodyTapes(front), shoulderTape(front), ...sleeveTapes(drawn)]
    const band = [
      [-front.hem / 2, RIB_DEPTH],
      [front.hem / 2, RIB_DEPTH],
    ] as const
    return topFigure(front, topHalf(front), drawn, { seams: traits['rib-bands'] ? [band] : [], tapes })
  },

  drafts(measures, traits) {
    const band = traits['rib-bands'] ? RIB_DEPTH : 0
    const bottom = traits['rib-bands'] ? seam : hem
    const worn = frontOf(measures, traits)
    const front = { ...worn, length: worn.length - band }
    const back = { ...front, neckDepth: BACK_NECK_DEPTH }
    const sleeve = sleeveFor(
      front,
      Math.max(1, read(measures, 'sleeve-length') - band),
      read(measures, 'cuff-width'),
    )
    const body = traits['side-seams']
      ? [whole('front', topHalf(front, bottom)), whole('back', topHalf(back, bottom))]
      : [openedTube('body', front, back, bottom)]
    return [...body, ...sleevePair(sleeve, bottom)]
  },
}

function frontOf(measures: Measures, traits: Traits): TopFigures {
  const armhole = read(measures, 'armhole-depth')
  const shoulder = read(measures, 'shoulder-width')
  const neckWidth = shoulder * NECK_OF_SHOULDER
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
