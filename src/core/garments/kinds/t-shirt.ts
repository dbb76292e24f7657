import { measure } from '../body-sizes.ts'
import { whole } from '../drafting/draft.ts'
import { downTape } from '../drafting/lines.ts'
import { sleeveFor, sleevePair } from '../drafting/sleeve-block.ts'
import {
  BACK_NECK_DEPTH,
  openedTube,
  shoulderSlope,
  type TopFigures,
  topHalf,
} from '../drafting/top-block.ts'
import { bodyTapes, drawnSleeve, shoulderTape, sleeveTapes, topFigure } from '../drafting/top-figure.ts'
import type { GarmentKind, Measures } from '../kind.ts'
import { armholeDepth, bodyLength, chest, hemWidth, read, shoulderWidth, sleeveLength } from './measures.ts'

/** A neckline's width is about four tenths of the shoulder's: 180 mm of 440. Common practice. */
const NECK_OF_SHOULDER = 180 / 440

/** Chest ease 80 mm: common practice 50 to 120 mm. */
const EASE = 80

export const tShirt: GarmentKind = {
  id: 't-shirt',
  measures: [
    chest(EASE),
    hemWidth((body) => body.chest / 2 + EASE / 2),
    bodyLength(1.6),
    shoulderWidth(25),
    armholeDepth(EASE),
    measure('neck-depth', 30, 300, (body) => body.shoulder * 0.22),
    sleeveLength(0.33),
  ],
  traits: [{ id: 'side-seams', usual: true }],
  less: [
    ['armhole-depth', 'body-length'],
    ['neck-depth', 'body-length'],
  ],

  figure(measures) {
    const { front, sleeve } = shaped(measures)
    const drawn = drawnSleeve(front, sleeve.length, sleeve.cuff)
    const neckTop = [0, front.length] as const
    const tapes = [
      ...bodyTapes(front),
      shoulderTape(front),
      downTape('neck-depth', neckTop, front.neckDepth),
      ...sleeveTapes(drawn).slice(0, 1),
    ]
    return topFigure(front, topHalf(front), drawn, { tapes })
  },

  drafts(measures, traits) {
    const { front, back, sleeve } = shaped(measures)
    const body = traits['side-seams']
      ? [whole('front', topHalf(front)), whole('back', topHalf(back))]
      : [openedTube('body', front, back)]
    return [...body, ...sleevePair(sleeve)]
  },
}

function shaped(measures: Measures) {
  const armhole = read(measures, 'armhole-depth')
  const shoulder = read(measures, 'shoulder-width')
  const front: TopFigures = {
    chest: read(measures, 'chest'),
    hem: read(measures, 'hem-width'),
    length: read(measures, 'body-length'),
    shoulder,
    slope: shoulderSlope(armhole),
    armhole,
    neckWidth: shoulder * NECK_OF_SHOULDER,
    neckDepth: read(measures, 'neck-depth'),
  }
  const back = { ...front, neckDepth: Math.min(BACK_NECK_DEPTH, front.neckDepth) }
  return { front, back, sleeve: sleeveFor(front, read(measures, 'sleeve-length'), null) }
}
