import { measure } from '../body-sizes.ts'
import { whole } from '../drafting/draft.ts'
import { acrossTape, downTape } from '../drafting/lines.ts'
import { openedTube, shoulderSlope, type TopFigures, topHalf } from '../drafting/top-block.ts'
import { bodyTapes, topFigure } from '../drafting/top-figure.ts'
import type { GarmentKind, Measures } from '../kind.ts'
import { armholeDepth, bodyLength, chest, hemWidth, read } from './measures.ts'

/** The back neck of a tank top is cut about half as deep as its front. Common practice. */
const BACK_OF_FRONT_NECK = 0.5

/** Chest ease 20 mm: worn close. Common practice. */
const EASE = 20

export const tankTop: GarmentKind = {
  id: 'tank-top',
  measures: [
    chest(EASE),
    hemWidth((body) => body.chest / 2 + 30),
    bodyLength(1.55),
    armholeDepth(60),
    measure('neck-width', 90, 350, (body) => body.shoulder * 0.5),
    measure('neck-depth', 40, 350, (body) => body.shoulder * 0.4),
    measure('strap-width', 10, 150, (body) => body.shoulder * 0.13),
  ],
  traits: [{ id: 'side-seams', usual: true }],
  less: [
    ['armhole-depth', 'body-length'],
    ['neck-depth', 'body-length'],
    ['neck-width', 'chest'],
  ],

  figure(measures) {
    const { front } = shaped(measures)
    const half = front.neckWidth / 2
    const tip = front.length - front.slope
    const tapes = [
      ...bodyTapes(front),
      acrossTape('neck-width', front.neckWidth, front.length),
      downTape('neck-depth', [0, front.length], front.neckDepth),
      { measure: 'strap-width', from: [half, front.length], to: [front.shoulder / 2, tip] } as const,
    ]
    return topFigure(front, topHalf(front), null, { tapes })
  },

  drafts(measures, traits) {
    const { front, back } = shaped(measures)
    return traits['side-seams']
      ? [whole('front', topHalf(front)), whole('back', topHalf(back))]
      : [openedTube('body', front, back)]
  },
}

function shaped(measures: Measures) {
  const armhole = read(measures, 'armhole-depth')
  const neckWidth = read(measures, 'neck-width')
  const strap = read(measures, 'strap-width')
  // The tape lies along the sloping shoulder; its level part is a little shorter.
  const slope = Math.min(shoulderSlope(armhole), strap / 4)
  const front: TopFigures = {
    chest: read(measures, 'chest'),
    hem: read(measures, 'hem-width'),
    length: read(measures, 'body-length'),
    shoulder: neckWidth + 2 * Math.sqrt(strap ** 2 - slope ** 2),
    slope,
    armhole,
    neckWidth,
    neckDepth: read(measures, 'neck-depth'),
  }
  return { front, back: { ...front, neckDepth: front.neckDepth * BACK_OF_FRONT_NECK } }
}
