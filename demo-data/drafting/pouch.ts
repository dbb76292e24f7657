import type { Mm } from '../../src/core/base/units.ts'
import type { NotionNeed } from '../../src/core/notions/notion.ts'
import type { OutlineShape, Pattern, StripShape } from '../../src/core/patterns/pattern.ts'
import { seamAllowance } from '../../src/core/patterns/seams.ts'
import { arc, line, onFold, zipped } from './draw.ts'
import { bySize, many } from './notions.ts'
import { inSizes, LEAST_WOVEN_SEAM, MOST_TILT, piece, WORKSHOP, WOVEN_GAP } from './piece.ts'

const SIZES = ['S', 'M', 'L', 'XL'] as const
type Size = (typeof SIZES)[number]

/** Finished width and height, mm. */
const BAG: Readonly<Record<Size, readonly [Mm, Mm]>> = {
  S: [160, 110],
  M: [200, 150],
  L: [240, 190],
  XL: [300, 240],
}
const SEAM = seamAllowance('craft')
/** Each end of the zip is covered by a tab, this long when done. */
const TAB: Mm = 20
/** Two rows of stitching with the cord between them stand this far above the bag proper. */
const HEAD: Mm = 45
/** Flat cord of a folded strip, this wide when done. */
const CORD: Mm = 8
/** Each cord runs once round and hangs out this much at both ends. */
const CORD_END: Mm = 110

/** Half on the fold: straight top, for a zip or with a head above it, and round lower corners. */
function bag(size: Size, head: Mm | 'zip'): OutlineShape {
  const [width, height] = BAG[size]
  const radius = height / 5
  const half = width / 2
  const top = head === 'zip' ? height : height + head
  const edge = line([0, top], SEAM)
  return onFold(
    [0, 0],
    [
      line([half - radius, 0], SEAM),
      arc([half - radius, radius], radius, -Math.PI / 2, 0, SEAM),
      line([half, top], SEAM),
      head === 'zip' ? zipped(edge) : edge,
    ],
  )
}

function strip(edge: Mm, height: Mm): StripShape {
  return { form: 'strip', edge, ratio: 1, height, folded: true, endAllowance: SEAM, sideAllowance: 6 }
}

/** A zip and its tabs are as long as the bag is wide, so each size takes one of its own. */
function zip(size: Size): NotionNeed {
  return {
    id: `zip-${size}`,
    kind: 'zip',
    name: 'Zip',
    width: BAG[size][0] - 2 * TAB,
    amount: { form: 'count', count: bySize(SIZES, (each) => (each === size ? 1 : 0)) },
    versions: ['zip'],
  }
}

export function pouch(): Pattern {
  const two = { copies: 2, joins: 'either' } as const
  const lining = { ...two, role: 'lining' } as const
  return {
    id: 'pouch',
    name: 'Lined pouch',
    about: 'A lined bag from 16 to 30 cm wide, closed by a zip or by two cords.',
    sizes: SIZES,
    versions: [
      { id: 'zip', name: 'With a zip', pieces: ['outer', 'outer-lining', 'zip-tab', 'wrist-strap'] },
      { id: 'cords', name: 'With cords', pieces: ['outer-tall', 'lining-low', 'head-facing', 'cord'] },
    ],
    pieces: [
      piece(
        'outer',
        'Outside',
        inSizes(SIZES, (size) => bag(size, 'zip')),
        two,
      ),
      piece(
        'outer-tall',
        'Outside with a head',
        inSizes(SIZES, (size) => bag(size, HEAD)),
        two,
      ),
      piece(
        'outer-lining',
        'Lining',
        inSizes(SIZES, (size) => bag(size, 'zip')),
        lining,
      ),
      piece(
        'lining-low',
        'Lining below the head',
        inSizes(SIZES, (size) => bag(size, 0)),
        lining,
      ),
      piece(
        'head-facing',
        'Facing of the head',
        inSizes(SIZES, (size) => ({ form: 'box', width: BAG[size][0], height: HEAD, allowance: SEAM })),
        { ...two, grain: 'either', joins: 'along' },
      ),
      piece(
        'zip-tab',
        'Tab for the zip end',
        inSizes(SIZES, () => strip(30, TAB)),
        { copies: 2, grain: 'any', tilt: 0 },
      ),
      piece(
        'cord',
        'Cord',
        inSizes(SIZES, (size) => strip(2 * (BAG[size][0] + CORD_END), CORD)),
        // Ribbon or cord serves as well.
        { ...two, grain: 'either', optional: true, joins: 'along' },
      ),
      piece(
        'wrist-strap',
        'Wrist strap',
        inSizes(SIZES, () => strip(320, 12)),
        { grain: 'either', optional: true, joins: 'along' },
      ),
    ],
    clearance: WOVEN_GAP,
    cloths: ['woven', 'stretch-woven'],
    leastAllowance: LEAST_WOVEN_SEAM,
    mostTilt: MOST_TILT,
    notions: [
      ...SIZES.map(zip),
      {
        id: 'ring',
        kind: 'ring',
        name: 'Ring for the wrist strap',
        width: 15,
        amount: many(SIZES, 1),
        versions: ['zip'],
      },
      {
        id: 'cords',
        kind: 'cord',
        name: 'Cords, if not of cloth',
        width: null,
        amount: { form: 'table', each: 2, length: bySize(SIZES, (size) => 2 * (BAG[size][0] + CORD_END)) },
        versions: ['cords'],
      },
    ],
    cautions: WORKSHOP,
  }
}
