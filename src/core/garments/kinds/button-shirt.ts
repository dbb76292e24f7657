import type { Point } from '../../geometry/types.ts'
import {
  boxFlaw,
  fold,
  hem,
  otherSide,
  type PanelDraft,
  type Path,
  raw,
  rightHalf,
  seam,
  whole,
} from '../drafting/draft.ts'
import { sleeveFor, sleevePanel } from '../drafting/sleeve-block.ts'
import {
  armholeBend,
  BACK_NECK_DEPTH,
  highPoint,
  neckEdge,
  shoulderSlope,
  shoulderTip,
  type TopFigures,
  topHalf,
  underarm,
} from '../drafting/top-block.ts'
import { bodyTapes, drawnSleeve, shoulderTape, sleeveTapes, topFigure } from '../drafting/top-figure.ts'
import type { BuiltInFlaw, GarmentKind, Measures } from '../kind.ts'
import { CUFF_DEPTH, PLACKET_OVERLAP, PLACKET_WIDTH, SLEEVE_SLIT } from '../losses.ts'
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

/** A collar stand's neckline: narrower and flatter than a round neck. Common practice. */
const NECK_OF_SHOULDER = 0.36
const NECK_DEPTH_OF_WIDTH = 0.5

/** A back yoke ends about here below the high point shoulder, as a share of the armhole: 100 mm of 250. Common practice. */
const YOKE_OF_ARMHOLE = 0.4

/** Chest ease of a woven shirt, 120 mm. Common practice. */
const EASE = 120

export const buttonShirt: GarmentKind = {
  id: 'button-shirt',
  measures: [
    chest(EASE),
    hemWidth((body) => Math.max(body.chest, body.hip) / 2 + EASE / 2),
    bodyLength(1.75),
    shoulderWidth(45),
    armholeDepth(EASE),
    sleeveLength(1),
    cuffWidth((body) => body.chest * 0.11),
  ],
  traits: [
    { id: 'yoke', usual: true },
    { id: 'chest-pocket', usual: true },
  ],
  less: [['armhole-depth', 'body-length']],

  figure(measures, traits) {
    const front = frontOf(measures)
    const drawn = drawnSleeve(front, read(measures, 'sleeve-length'), read(measures, 'cuff-width'))
    const top = front.length - front.neckDepth
    const edge = PLACKET_WIDTH - PLACKET_OVERLAP
    const line = (x: number): readonly Point[] => [
      [x, 0],
      [x, top],
    ]
    const pocket = traits['chest-pocket'] ? [pocketFlaw(front).outline] : []
    return topFigure(front, topHalf(front), drawn, {
      seams: [line(-edge), line(edge), ...pocket.map(closed)],
      tapes: [...bodyTapes(front), shoulderTape(front), ...sleeveTapes(drawn)],
    })
  },

  drafts(measures, traits) {
    const front = frontOf(measures)
    const left = frontPanel('front-left', front, traits['chest-pocket'] ? [pocketFlaw(front)] : [])
    const right = otherSide('front-right', frontPanel('front-left', front, []))
    return [left, right, ...backPanels(front, traits.yoke === true), ...sleeves(front, measures)]
  },
}

/** The wearer's left front, on the right as one looks at it, from its folded front edge to the side. */
function frontPanel(id: string, front: TopFigures, flaws: readonly BuiltInFlaw[]): PanelDraft {
  const { edges } = topHalf(front)
  const top = front.length - front.neckDepth
  const half: Path = { start: [-PLACKET_OVERLAP, 0], edges: [...edges, raw([-PLACKET_OVERLAP, top])] }
  const placket = boxFlaw('placket', -PLACKET_OVERLAP, 0, PLACKET_WIDTH - PLACKET_OVERLAP, top)
  return rightHalf(id, half, fold, [placket, ...flaws])
}

/** A patch pocket on the left breast: the cloth under it is unfaded and pierced. */
function pocketFlaw(front: TopFigures): BuiltInFlaw {
  const level = front.length - front.armhole
  const [width, height] = [front.chest * 0.22, front.chest * 0.25]
  const left = front.chest * 0.13
  return boxFlaw('pocket', left, level - height * 0.8, left + width, level + height * 0.2)
}

function backPanels(front: TopFigures, yoke: boolean): readonly PanelDraft[] {
  const back = { ...front, neckDepth: BACK_NECK_DEPTH }
  if (!yoke) return [whole('back', topHalf(back))]
  const level = back.length - back.armhole * YOKE_OF_ARMHOLE
  const end: Point = [armholeBend(back)[0], level]
  const below: Path = {
    start: [0, 0],
    edges: [hem([back.hem / 2, 0]), seam(underarm(back)), seam(end, armholeBend(back)), seam([0, level])],
  }
  const above: Path = {
    start: [0, level],
    edges: [seam(end), seam(shoulderTip(back)), seam(highPoint(back)), neckEdge(back)],
  }
  return [whole('back', below), whole('yoke', above)]
}

/** The cuff is lost, the slit above it too. The slit lies toward the back: on the left sleeve on the right as one looks at it. */
function sleeves(front: TopFigures, measures: Measures): readonly PanelDraft[] {
  const length = Math.max(1, read(measures, 'sleeve-length') - CUFF_DEPTH)
  const figures = sleeveFor(front, length, read(measures, 'cuff-width'))
  const middle = figures.cuff / 2
  const { width } = SLEEVE_SLIT
  const slit = boxFlaw(
    'placket',
    middle - width / 2,
    0,
    middle + width / 2,
    Math.min(SLEEVE_SLIT.length, length / 2),
  )
  const left = sleevePanel('sleeve-left', figures, seam, [slit])
  return [left, otherSide('sleeve-right', left)]
}

function frontOf(measures: Measures): TopFigures {
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
    neckDepth: neckWidth * NECK_DEPTH_OF_WIDTH,
  }
}

function closed(outline: readonly Point[]): readonly Point[] {
  return [...outline, outline[0] as Point]
}
