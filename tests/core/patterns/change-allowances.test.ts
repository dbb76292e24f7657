import { describe, expect, it } from 'vitest'
import { polygonBox } from '../../../src/core/geometry/index.ts'
import { allowancesOf, withAllowancesAtMost } from '../../../src/core/patterns/change-allowances.ts'
import { cutOutline } from '../../../src/core/patterns/cut-outline.ts'
import type { OutlineShape, StripShape } from '../../../src/core/patterns/pattern.ts'

const SKIRT: OutlineShape = {
  form: 'outline',
  onFold: true,
  points: [
    { at: [0, 0], allowance: 30, use: 'hem' },
    { at: [100, 0], allowance: 15 },
    { at: [100, 200], allowance: 34, use: 'casing' },
    { at: [0, 200], allowance: 99 },
  ],
}

const STRIP: StripShape = {
  form: 'strip',
  edge: 300,
  ratio: 1,
  height: 20,
  folded: true,
  endAllowance: 12,
  sideAllowance: 6,
}

describe('allowances by what they are for', () => {
  it('are read edge by edge; a fold has none', () => {
    expect(allowancesOf(SKIRT)).toEqual([
      { width: 30, use: 'hem', fixed: false },
      { width: 15, use: 'seam', fixed: false },
      { width: 34, use: 'casing', fixed: false },
    ])
    expect(allowancesOf(STRIP).map(({ width }) => width)).toEqual([12, 6])
  })

  it('are brought down one use at a time, and casings never', () => {
    const seams = withAllowancesAtMost(SKIRT, 'seam', 10)
    expect(polygonBox(cutOutline(seams))).toEqual({ minX: -110, maxX: 110, minY: -30, maxY: 234 })
    const hem = withAllowancesAtMost(SKIRT, 'hem', 12)
    expect(polygonBox(cutOutline(hem))).toEqual({ minX: -115, maxX: 115, minY: -12, maxY: 234 })
  })

  it('stay where something is sewn in that needs them, as a zip does', () => {
    const zipped: OutlineShape = {
      ...SKIRT,
      points: SKIRT.points.map((point, k) => (k === 1 ? { ...point, fixed: true as const } : point)),
    }
    expect(allowancesOf(zipped).map(({ fixed }) => fixed)).toEqual([false, true, false])
    const narrowed = withAllowancesAtMost(zipped, 'seam', 10)
    expect(polygonBox(cutOutline(narrowed))).toEqual({ minX: -115, maxX: 115, minY: -30, maxY: 234 })
    expect(withAllowancesAtMost(SKIRT, 'seam', 10)).not.toEqual(narrowed)
  })

  it('are never widened', () => {
    expect(withAllowancesAtMost(STRIP, 'seam', 8)).toEqual({ ...STRIP, endAllowance: 8 })
    expect(withAllowancesAtMost({ form: 'circle', diameter: 9, allowance: 3 }, 'seam', 5)).toEqual({
      form: 'circle',
      diameter: 9,
      allowance: 3,
    })
    expect(withAllowancesAtMost(STRIP, 'hem', 0)).toEqual(STRIP)
  })
})
