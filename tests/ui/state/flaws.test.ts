import { describe, expect, it } from 'vitest'
import { shapeOutlines } from '../../../src/core/garments/index.ts'
import { polygonBox } from '../../../src/core/geometry/index.ts'
import {
  type FlawForm,
  figuresOf,
  handleOf,
  LEAST_MARK,
  moved,
  newFlaw,
  sizedTo,
} from '../../../src/ui/state/flaws.ts'

const PANEL = { minX: -250, minY: 10, maxX: 250, maxY: 700 }
const FORMS: readonly FlawForm[] = ['round', 'box', 'line']
const shape = (form: FlawForm) => newFlaw('a', 'front', 'hole', form, [100, 200]).shape

/** Middle of everything a shape covers. */
function middle(form: FlawForm, change = shape(form)) {
  const { minX, minY, maxX, maxY } = polygonBox(shapeOutlines(change).flat())
  return [(minX + maxX) / 2, (minY + maxY) / 2]
}

describe.each(FORMS)('a %s mark', (form) => {
  it('starts round the point tapped', () => {
    expect(middle(form)[0]).toBeCloseTo(100)
    expect(middle(form)[1]).toBeCloseTo(200)
  })

  it('moves by what it is dragged', () => {
    expect(middle(form, moved(shape(form), 30, -50))).toEqual([expect.closeTo(130), expect.closeTo(150)])
  })

  it('has its handle where its handle was dragged to', () => {
    const to = form === 'round' ? ([160, 200] as const) : ([170, 260] as const)
    expect(handleOf(sizedTo(shape(form), to))).toEqual(to)
  })

  it('keeps a size when its handle is dragged onto itself', () => {
    const [x, y] = [100, 200]
    const covered = polygonBox(shapeOutlines(sizedTo(shape(form), [x - 500, y])).flat())
    expect(covered.maxX - covered.minX).toBeGreaterThanOrEqual(LEAST_MARK)
  })

  it('says each figure so that typing it back changes nothing', () => {
    for (const figure of figuresOf(shape(form), PANEL)) {
      const again = figuresOf(figure.with(figure.value), PANEL)
      expect(again.map(({ value }) => value)).toEqual(figuresOf(shape(form), PANEL).map(({ value }) => value))
    }
  })

  it('takes each figure typed', () => {
    for (const { id, value, with: typed } of figuresOf(shape(form), PANEL)) {
      const figure = figuresOf(typed(value + 7), PANEL).find((each) => each.id === id)
      expect(figure?.value).toBeCloseTo(value + 7)
    }
  })
})
