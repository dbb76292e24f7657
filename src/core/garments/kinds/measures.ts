import type { Mm } from '../../base/units.ts'
import { type BodySize, measure } from '../body-sizes.ts'
import type { MeasureSpec, Measures } from '../kind.ts'

/**
 * Measures that several kinds share. Ranges are wide: from a small child's to the largest adult's garment. Starting
 * values are the body's plus the ease given; eases are common practice.
 */

/** Pit to pit. */
export const chest = (ease: Mm): MeasureSpec =>
  measure('chest', 220, 850, (body) => body.chest / 2 + ease / 2)

/** High point shoulder to hem, as a multiple of nape to waist. */
export const bodyLength = (ofBackWaist: number): MeasureSpec =>
  measure('body-length', 250, 1000, (body) => body.backWaist * ofBackWaist)

export const hemWidth = (start: (body: BodySize) => Mm, most: Mm = 1000): MeasureSpec =>
  measure('hem-width', 200, most, start)

export const shoulderWidth = (more: Mm): MeasureSpec =>
  measure('shoulder-width', 180, 750, (body) => body.shoulder + more)

/** High point shoulder straight down to the level of the underarm. */
export const armholeDepth = (ease: Mm): MeasureSpec =>
  measure('armhole-depth', 110, 400, (body) => 0.22 * (body.chest + ease) + 10)

export const sleeveLength = (ofArm: number): MeasureSpec =>
  measure('sleeve-length', 60, 800, (body) => body.arm * ofArm)

export const cuffWidth = (start: (body: BodySize) => Mm): MeasureSpec => measure('cuff-width', 50, 350, start)

export const waistWidth = (ease: Mm): MeasureSpec =>
  measure('waist-width', 150, 850, (body) => body.waist / 2 + ease / 2)

export const hipWidth = (ease: Mm): MeasureSpec =>
  measure('hip-width', 200, 900, (body) => body.hip / 2 + ease / 2)

/** The figure by this id; every kind is given all its measures. */
export function read(measures: Measures, id: string): Mm {
  const value = measures[id]
  if (value === undefined) throw new Error(`the measure ${id} is missing`)
  return value
}
