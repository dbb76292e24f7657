import { describe, expect, it } from 'vitest'
import { hem, type Path, raw, seam, whole } from '../../src/core/garments/drafting/draft.ts'
import { legPanel } from '../../src/core/garments/drafting/leg-block.ts'
import { flaredHalf } from '../../src/core/garments/drafting/skirt-block.ts'
import { sleevePanel } from '../../src/core/garments/drafting/sleeve-block.ts'
import { shoulderSlope, topHalf } from '../../src/core/garments/drafting/top-block.ts'
import { outlineOf, traced } from '../../src/core/garments/drafting/trace.ts'
import { KIND_IDS, LABEL_SIZES } from '../../src/core/garments/kind.ts'
import { kindOf } from '../../src/core/garments/kinds.ts'
import { lossWhenCut } from '../../src/core/garments/losses.ts'
import { inset } from '../../src/core/garments/opening/inset.ts'
import { openPanel } from '../../src/core/garments/opening/open-panel.ts'
import { polygonArea, polygonBox } from '../../src/core/geometry/polygon.ts'

/**
 * Worked areas of garment panels. The outlines (which points a front, a skirt panel, a trouser leg run through) are common
 * practice; the areas follow by the shoelace formula and can be checked by hand. Lines first, curves refine.
 */
const straightArea = (path: Path) => polygonArea(outlineOf(traced(path, 'straight')))
const curvedArea = (path: Path) => polygonArea(outlineOf(traced(path)))

/** Neck 180 wide and 90 deep, shoulder 440, slope 40, chest 520, armhole 240, hem 520, length 700. */
const TEE = {
  chest: 520,
  hem: 520,
  length: 700,
  shoulder: 440,
  slope: 40,
  armhole: 240,
  neckWidth: 180,
  neckDepth: 90,
}

describe('a T-shirt laid flat', () => {
  it('has a front of 339,500 mm² by straight lines, half of it 169,750', () => {
    expect(straightArea(whole('front', topHalf(TEE)))).toBe(339_500)
    const half = topHalf(TEE)
    expect(straightArea({ ...half, edges: [...half.edges, seam(half.start)] })).toBe(169_750)
  })

  it('has a back of 345,800 mm² with a neck 20 mm deep', () => {
    expect(straightArea(whole('back', topHalf({ ...TEE, neckDepth: 20 })))).toBe(345_800)
  })

  it('slopes 40 mm from neck to shoulder tip at an armhole of 240 mm, within the usual 30 to 50 mm', () => {
    expect(shoulderSlope(240)).toBe(40)
  })

  it('never gains by its curves what the lines do not have', () => {
    expect(curvedArea(whole('front', topHalf(TEE)))).toBeLessThan(339_500)
  })

  it('gives 490 × 435 mm below the armhole when 15 mm are lost at each side and 25 at the hem', () => {
    const body = [
      { from: [0, 0], to: [520, 0], loss: 25 },
      { from: [520, 0], to: [520, 460], loss: 15 },
      { from: [520, 460], to: [0, 460], loss: 0 },
      { from: [0, 460], to: [0, 0], loss: 15 },
    ] as const
    const { outline } = inset(body)!
    const box = polygonBox(outline)
    expect(box.maxX - box.minX).toBe(490)
    expect(box.maxY - box.minY).toBe(435)
    expect(polygonArea(outline)).toBe(490 * 435)
  })
})

describe('a sleeve', () => {
  it('has U (B + K) below its cap, unfolded, by straight lines', () => {
    const [length, cap, bicep, cuff] = [600, 120, 190, 110]
    const below = (length - cap) * (bicep + cuff)
    expect(straightArea(sleevePanel('sleeve', { length, cap, bicep, cuff }))).toBeCloseTo(
      below + bicep * cap,
      6,
    )
  })
})

describe('a skirt panel', () => {
  it('of waist 360, hem 520, length 600 has 264,000 mm², curved waist and hem included', () => {
    const area = curvedArea(whole('front', flaredHalf({ waist: 360, hem: 520, length: 600 })))
    // Chords inside the hem and tangents inside the waist cost up to 1 mm along both edges.
    expect(area).toBeLessThanOrEqual(264_000)
    expect(area).toBeGreaterThan(264_000 - (360 + 520))
  })
})

describe('a trouser leg panel', () => {
  it('through (0,0) (200,0) (300,270) (180,1030) (0,1030) has 249,900 mm²', () => {
    const leg = { waist: 200, hip: 200, thigh: 300, opening: 180, rise: 270, raise: 0, inseam: 760 }
    // Ours hangs the hem below the middle of the thigh instead of below the side: a shear, which keeps the area.
    expect(straightArea(legPanel('front', leg))).toBe(249_900)
  })
})

describe('what opening costs', () => {
  it('is 10 to 15 mm at a seam and the fold at a hem (common practice)', () => {
    expect(lossWhenCut('seam', 0)).toBeGreaterThanOrEqual(10)
    expect(lossWhenCut('seam', 0)).toBeLessThanOrEqual(15)
    expect(lossWhenCut('hem', 25)).toBe(25)
    expect(lossWhenCut('raw', 0)).toBe(0)
  })

  it('of an unpicked hem gives back its depth', () => {
    const edges = [hem([400, 0], 25), seam([400, 300]), raw([0, 300]), seam([0, 0])]
    const draft = { id: 'panel', start: [0, 0] as const, edges, flaws: [] }
    expect(polygonArea(openPanel(draft, 'unpicked')!.outline)).toBe(400 * 325)
    expect(polygonArea(openPanel(draft, 'cut')!.outline)).toBe(380 * 275)
  })
})

describe('starting measures', () => {
  const chests = (kind: 't-shirt' | 'button-shirt') =>
    kindOf(kind).measures.find(({ id }) => id === 'chest')!.start

  it('leave a tee 50 to 120 mm of ease round the bust (common practice) of EN 13402-3, women (from memory)', () => {
    const bust = {
      XS: [740, 820],
      S: [820, 900],
      M: [900, 980],
      L: [980, 1070],
      XL: [1070, 1190],
      XXL: [1190, 1310],
    }
    for (const [size, [least, most]] of Object.entries(bust)) {
      const girth = 2 * chests('t-shirt')[size as keyof typeof bust]
      expect(girth - (least! + most!) / 2).toBeGreaterThanOrEqual(50)
      expect(girth - (least! + most!) / 2).toBeLessThanOrEqual(120)
    }
  })

  it('make wovens roomier than knits (common practice)', () => {
    for (const size of LABEL_SIZES)
      expect(chests('button-shirt')[size]).toBeGreaterThan(chests('t-shirt')[size])
  })

  it('let a back rise exceed its front rise by 25 to 60 mm (common practice)', () => {
    const trousers = kindOf('trousers')
    const start = Object.fromEntries(trousers.measures.map((spec) => [spec.id, spec.start.M]))
    const height = (id: string) => {
      const draft = trousers.drafts(start, { waistband: true }).find((panel) => panel.id === id)!
      return polygonBox(outlineOf(traced(draft))).maxY
    }
    const more = height('back-left') - height('front-left')
    expect(more).toBeGreaterThanOrEqual(25)
    expect(more).toBeLessThanOrEqual(60)
  })

  it('cover every kind', () => {
    for (const id of KIND_IDS)
      for (const spec of kindOf(id).measures) expect(Object.keys(spec.start)).toHaveLength(LABEL_SIZES.length)
  })
})
