import type { Mm } from '../base/units.ts'
import { LABEL_SIZES, type LabelSize, type MeasureSpec } from './kind.ts'

/** A body of a labelled size, mm; girths in full. */
export interface BodySize {
  readonly chest: Mm
  readonly waist: Mm
  readonly hip: Mm
  readonly thigh: Mm
  /** Across the back, seam to seam. */
  readonly shoulder: Mm
  /** Nape to waist. */
  readonly backWaist: Mm
  /** Shoulder tip to wrist. */
  readonly arm: Mm
  /** Crotch to floor. */
  readonly innerLeg: Mm
  /** Waist to seat, sitting. */
  readonly rise: Mm
}

/**
 * Girths of letter sizes: middles of the women's ranges of EN 13402-3, from memory (bust 74-82-90-98-107-119-131 cm);
 * children by height and all lengths: from memory of common size tables. They only start the figures off.
 */
const BODIES: Readonly<Record<LabelSize, BodySize>> = {
  '104': body(560, 530, 580, 330, 260, 250, 360, 450, 180),
  '116': body(590, 550, 630, 350, 280, 275, 410, 520, 195),
  '128': body(640, 590, 690, 385, 305, 300, 460, 590, 210),
  '140': body(700, 630, 750, 425, 330, 325, 510, 650, 225),
  '152': body(760, 670, 820, 465, 355, 355, 555, 710, 240),
  XS: body(780, 620, 860, 510, 365, 395, 590, 770, 255),
  S: body(860, 700, 940, 545, 380, 402, 595, 775, 262),
  M: body(940, 780, 1020, 580, 395, 410, 600, 780, 270),
  L: body(1025, 865, 1100, 620, 410, 418, 605, 785, 278),
  XL: body(1130, 970, 1190, 675, 430, 430, 610, 790, 290),
  XXL: body(1250, 1090, 1280, 735, 455, 442, 615, 790, 302),
}

function body(
  chest: Mm,
  waist: Mm,
  hip: Mm,
  thigh: Mm,
  shoulder: Mm,
  backWaist: Mm,
  arm: Mm,
  innerLeg: Mm,
  rise: Mm,
): BodySize {
  return { chest, waist, hip, thigh, shoulder, backWaist, arm, innerLeg, rise }
}

/** A measure with its plausible range and its starting value, drawn from the body and rounded to 5 mm. */
export function measure(id: string, least: Mm, most: Mm, start: (body: BodySize) => Mm): MeasureSpec {
  const values = LABEL_SIZES.map((size) => [size, Math.round(start(BODIES[size]) / 5) * 5] as const)
  return { id, least, most, start: Object.fromEntries(values) as Record<LabelSize, Mm> }
}
