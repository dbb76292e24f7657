import type { Mm } from '../../src/core/base/units.ts'

/** A grown-up body, girths and lengths in mm. */
export interface Body {
  readonly bust: Mm
  readonly underbust: Mm
  readonly waist: Mm
  readonly hip: Mm
  readonly thigh: Mm
  readonly knee: Mm
  readonly ankle: Mm
  /** Crotch to ankle bone, along the inside of the leg. */
  readonly insideLeg: Mm
  /** Waist to crotch level, sitting. */
  readonly rise: Mm
  /** Nape to waist. */
  readonly backWaist: Mm
}

export const LETTERS = ['XS', 'S', 'M', 'L', 'XL'] as const
export type Letter = (typeof LETTERS)[number]

/**
 * Busts are the middles of the women's letter ranges of EN 13402-3 (74-82-90-98-107-119 cm), waists and hips follow its
 * steps; both from memory. Rises go with the hips, 28 cm at 94 and 7 mm more every 5 cm, as in drafting tables (Aldrich,
 * Metric Pattern Cutting, from memory). Other girths and lengths are plausible for those bodies, common practice.
 */
export const GROWN: Readonly<Record<Letter, Body>> = {
  XS: body(780, 680, 620, 860, 500, 340, 215, 730, 269, 395),
  S: body(860, 750, 700, 940, 540, 360, 225, 735, 280, 402),
  M: body(940, 830, 780, 1020, 580, 380, 235, 740, 291, 410),
  L: body(1025, 915, 865, 1105, 625, 405, 247, 745, 303, 418),
  XL: body(1130, 1020, 970, 1205, 675, 432, 260, 750, 317, 430),
}

/**
 * From the waist in front through the legs to the waist at the back, along a woven trouser block: twice the rise, and for
 * the depth of the body 0.14 of the hip. It gives the block's 692 mm at a hip of 940 (drafted from the same tables).
 */
export function crotchLength({ rise, hip }: Body): Mm {
  return 2 * rise + 0.14 * hip
}

/**
 * Round both shoulders over the upper arms, which a top without a fastening must pass: some 12 cm more than the bust (104
 * and 91 cm in the mean of a large survey of women, from memory).
 */
export function shoulderGirth({ bust }: Body): Mm {
  return bust + 120
}

function body(
  bust: Mm,
  underbust: Mm,
  waist: Mm,
  hip: Mm,
  thigh: Mm,
  knee: Mm,
  ankle: Mm,
  insideLeg: Mm,
  rise: Mm,
  backWaist: Mm,
): Body {
  return { bust, underbust, waist, hip, thigh, knee, ankle, insideLeg, rise, backWaist }
}

/** A child's body, mm. */
export interface ChildBody {
  readonly chest: Mm
  readonly head: Mm
  readonly upperArm: Mm
  readonly wrist: Mm
  /** Underarm to wrist. */
  readonly underarm: Mm
  /** Underarm level to hip line. */
  readonly side: Mm
  /** Nape to underarm level. */
  readonly scye: Mm
}

export const HEIGHTS = ['104', '110', '116', '122', '128', '134', '140'] as const
export type Height = (typeof HEIGHTS)[number]

/** By height in cm, in the 6 cm steps of EN 13402-3, from memory; the rest is plausible for such bodies, common practice. */
export const CHILDREN: Readonly<Record<Height, ChildBody>> = {
  '104': child(560, 510, 175, 130, 275, 255, 140),
  '110': child(575, 515, 180, 132, 292, 267, 146),
  '116': child(595, 520, 186, 135, 309, 279, 152),
  '122': child(620, 523, 193, 138, 326, 291, 158),
  '128': child(645, 527, 201, 142, 343, 303, 164),
  '134': child(675, 531, 210, 146, 360, 315, 170),
  '140': child(705, 535, 219, 150, 377, 327, 176),
}

function child(chest: Mm, head: Mm, upperArm: Mm, wrist: Mm, underarm: Mm, side: Mm, scye: Mm): ChildBody {
  return { chest, head, upperArm, wrist, underarm, side, scye }
}
