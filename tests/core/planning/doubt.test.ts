import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Garment } from '../../../src/core/garments/garment.ts'
import type { PanelShape } from '../../../src/core/garments/kind.ts'
import { panelsOf } from '../../../src/core/garments/panels-of.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import { ringsIntersection, ringsOffset } from '../../../src/core/geometry/clipper.ts'
import { polygonBox } from '../../../src/core/geometry/index.ts'
import { minkowskiErosion, polygonNegated } from '../../../src/core/geometry/minkowski.ts'
import type { Rings } from '../../../src/core/geometry/types.ts'
import { oddMeasures, roomAsked, standing, TAPE_DOUBT } from '../../../src/core/planning/doubt.ts'
import type { Lay } from '../../../src/core/planning/lay.ts'
import { measuresAsked, withMeasuresReduced } from '../../../src/core/planning/measures-off.ts'
import { answered, asking, boxPiece, measuredCloth, patternOf } from '../../support/check-questions.ts'
import { MEASURED_KINDS, plausibleGarment } from '../../support/garments.ts'
import { within } from '../../support/lay-problems.ts'

const lay = (
  verdict: Lay['verdict'],
  spare: number | null,
  spareIs: Lay['spareIs'] = verdict === 'fits' ? 'found' : null,
): Lay => ({
  verdict,
  spare,
  spareIs,
  placements: [],
  reason: null,
  leftOut: [],
  elapsedMs: 0,
})

describe('standing', () => {
  const shirt = emptyGarment('button-shirt', 'shirt')

  it.each<[Lay['verdict'], number | null, string]>([
    ['fits', 8, 'fits-with-room'],
    ['fits', 30, 'fits-with-room'],
    ['fits', 7.9, 'fits-if-tape-right'],
    ['fits', 0, 'fits-if-tape-right'],
    ['cannot', null, 'cannot'],
    ['not-found', null, 'not-found'],
  ])('%s with a spare of %s is %s', (verdict, spare, wanted) => {
    expect(standing({ lay: lay(verdict, spare) }, shirt, TAPE_DOUBT)).toBe(wanted)
  })

  it.each([
    [null, 'fits-so-far'],
    [7.9, 'fits-so-far'],
    [8, 'fits-with-room'],
  ])('is no doubt of a spare that is %s at least: %s', (spare, wanted) => {
    expect(standing({ lay: lay('fits', spare, 'at-least') }, shirt, TAPE_DOUBT)).toBe(wanted)
  })

  it('is sure of nothing with a measure that is rare for such a garment: the figure may be a slip', () => {
    const slip = { ...shirt, measures: { ...shirt.measures, chest: 52 } }
    expect(standing({ lay: lay('fits', 90) }, slip, TAPE_DOUBT)).toBe('fits-if-measures-right')
    expect(standing({ lay: lay('cannot', null) }, slip, TAPE_DOUBT)).toBe('cannot-if-measures-right')
    expect(standing({ lay: lay('not-found', null) }, slip, TAPE_DOUBT)).toBe('not-found')
    expect(oddMeasures(slip)).toEqual(['chest'])
    expect(oddMeasures(shirt)).toEqual([])
  })

  it('asks for more where several measures move one edge', () => {
    expect(standing({ lay: lay('fits', 12) }, emptyGarment('tank-top', 'top'), 8)).toBe('fits-if-tape-right')
    expect(standing({ lay: lay('fits', 16) }, emptyGarment('tank-top', 'top'), 8)).toBe('fits-with-room')
  })

  // Worked by hand (common practice: keep piece and uncertainty inside): cloth 490 × 435, piece 430 high, ±5 all round:
  // 430 + 2 × 5 = 440 > 435, no; 420 + 2 × 5 = 430, yes.
  it.each([
    [430, 'fits-if-tape-right'],
    [420, 'fits-with-room'],
  ])('a piece %d high on cloth 435 high, measured to 5 mm: %s', (height, wanted) => {
    const garment = measuredCloth(490, 435)
    const found = answered(asking(patternOf([boxPiece('front', 300, height)]), garment), within(5))
    expect(standing(found, garment, 5)).toBe(wanted)
  })
})

describe('measures off by the doubt', () => {
  it('double in the girth: 520 ± 5 is 1040 ± 10 (by definition of a half girth)', () => {
    const tube: Garment = {
      ...emptyGarment('t-shirt', 'tube'),
      traits: { 'side-seams': false },
      measures: { ...emptyGarment('t-shirt', 'tube').measures, chest: 520, 'hem-width': 520 },
    }
    const width = (garment: Garment) => {
      const { minX, maxX } = polygonBox(panelsOf(garment).find(({ id }) => id === 'body')!.outline)
      return maxX - minX
    }
    expect(width(tube)).toBeCloseTo(1040, 6)
    expect(width(tube) - width(withMeasuresReduced(tube, 5, ['chest', 'hem-width']))).toBeCloseTo(10, 6)
  })

  it('leave the others and the garment itself alone', () => {
    const cloth = measuredCloth(300, 200)
    expect(withMeasuresReduced(cloth, 8, ['cloth-width']).measures).toEqual({
      'cloth-width': 292,
      'cloth-length': 200,
    })
    expect(cloth.measures['cloth-width']).toBe(300)
  })

  it('never make an impossible garment of a possible one', () => {
    const low = emptyGarment('t-shirt', 'low')
    const tight = { ...low, measures: { ...low.measures, 'body-length': 300, 'neck-depth': 296 } }
    expect(withMeasuresReduced(tight, 8, ['body-length']).measures['body-length']).toBe(297)
    expect(withMeasuresReduced(tight, 8, ['neck-depth']).measures['neck-depth']).toBe(288)
    expect(withMeasuresReduced(measuredCloth(5, 5), 8).measures).toEqual({
      'cloth-width': 1,
      'cloth-length': 1,
    })
  })

  it('draw a drawn outline in all round, to nothing if need be', () => {
    const outline = [
      [0, 0],
      [100, 0],
      [100, 60],
      [0, 60],
    ] as const
    const scrap: Garment = { ...emptyGarment('free-outline', 'scrap'), outline }
    expect(polygonBox(withMeasuresReduced(scrap, 8).outline!)).toEqual({
      minX: 8,
      maxX: 92,
      minY: 8,
      maxY: 52,
    })
    expect(withMeasuresReduced(scrap, 40).outline).toBeNull()
  })
})

/** Rounding of the polygon library and of parts of no area, mm. */
const ROUNDING = 0.05

/**
 * Whether any lay that leaves `spare` on the panel survives on the other: the panel with its edges moved in and its flaws
 * grown by the spare can be shifted so that it lies within the other and covers the other's flaws.
 */
function survives(panel: PanelShape, other: PanelShape | undefined, spare: number): boolean {
  return ringsOffset([panel.outline], -spare, 'mitre').every((part) => {
    if (!other) return false
    let shifts: Rings = minkowskiErosion(other.outline, part)
    for (const [k, flaw] of panel.flaws.entries()) {
      const grown = ringsOffset([flaw.outline], spare, 'mitre')[0]!
      const covering = minkowskiErosion(grown, other.flaws[k]!.outline)
      shifts = ringsIntersection(shifts, covering.map(polygonNegated))
    }
    return shifts.length > 0
  })
}

describe('the room asked is enough, over plausible garments', () => {
  it.each(MEASURED_KINDS)('%s, with any one measure and with all of them too large', (kind) => {
    fc.assert(
      fc.property(plausibleGarment(kind), fc.integer({ min: 3, max: 15 }), (garment, doubt) => {
        const panels = panelsOf(garment)
        const room = roomAsked(garment, doubt) + ROUNDING
        for (const only of [...measuresAsked(garment).map((id) => [id]), undefined]) {
          const reduced = panelsOf(withMeasuresReduced(garment, doubt, only))
          for (const panel of panels) {
            const other = reduced.find(({ id }) => id === panel.id)
            if (!survives(panel, other, room)) throw new Error(`${panel.id} without ${only ?? 'all'}`)
          }
        }
      }),
      { numRuns: 12 },
    )
  })

  it('would not be enough without the shares: a tank top moved in by the doubt alone', () => {
    const top = emptyGarment('tank-top', 'top')
    const [panel] = panelsOf(top) as [PanelShape]
    const [other] = panelsOf(withMeasuresReduced(top, 8))
    expect(survives(panel, other, 8 + ROUNDING)).toBe(false)
    expect(survives(panel, other, 16 + ROUNDING)).toBe(true)
  })
})
