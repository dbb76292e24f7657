import { signal } from '@preact/signals'
import type { Mm } from '../../core/base/units.ts'
import {
  needOfStrip,
  planRows,
  type RowPlan,
  type StripNeed,
  TORN_EDGE,
  tierNeeds,
} from '../../core/rectangles/index.ts'

export type Making = 'tiers' | 'band' | 'ties'

/** What she has typed into the reckoning of strips; null: not yet. */
export interface StripsTyped {
  readonly making: Making
  /** Finished length of the edge, or of a tie. */
  readonly edge: Mm | null
  /** Per cent. */
  readonly gather: number
  readonly tiers: number
  /** Finished length of all tiers together. */
  readonly length: Mm | null
  /** Finished width of a band or tie. */
  readonly height: Mm | null
  readonly folded: boolean
  readonly copies: number
  readonly seam: Mm
  readonly hem: Mm
  readonly clothWidth: Mm | null
  readonly clothLength: Mm | null
  readonly run: 'across' | 'along'
  readonly torn: boolean
}

const START: StripsTyped = {
  making: 'tiers',
  edge: null,
  gather: 200,
  tiers: 3,
  length: null,
  height: null,
  folded: false,
  copies: 2,
  seam: 10,
  hem: 20,
  clothWidth: null,
  clothLength: null,
  run: 'across',
  torn: false,
}

/** Stays while she looks at something else. */
export const stripsTyped = signal<StripsTyped>(START)

export function typeStrips(part: Partial<StripsTyped>): void {
  stripsTyped.value = { ...stripsTyped.value, ...part }
}

/** The strips wanted, or null while a figure is missing. `nameOf` gives the name of a tier, from 1 on. */
export function stripNeeds(
  typed: StripsTyped,
  nameOf: (tier: number) => string,
): readonly StripNeed[] | null {
  const { making, edge, gather, tiers, length, height, folded, copies, seam, hem } = typed
  if (edge === null) return null
  if (making === 'tiers') {
    if (length === null) return null
    const heights = Array<Mm>(tiers).fill(length / tiers)
    return tierNeeds({ edge, ratio: gather / 100, heights, seam, hem }, nameOf)
  }
  if (height === null) return null
  const ratio = making === 'ties' ? 1 : gather / 100
  const twice = making === 'ties' || folded
  const strip = {
    form: 'strip',
    edge,
    ratio,
    height,
    folded: twice,
    endAllowance: seam,
    sideAllowance: seam,
  } as const
  return [needOfStrip(nameOf(1), strip, making === 'ties' ? copies : 1)]
}

/** How they come out of the cloth. `missing`: figures are; `all-seam`: the cloth is too narrow for any strip. */
export function stripsPlan(
  typed: StripsTyped,
  needs: readonly StripNeed[] | null,
): RowPlan | 'missing' | 'all-seam' {
  const { clothWidth, clothLength, run, torn } = typed
  if (needs === null || clothWidth === null || clothLength === null) return 'missing'
  const cloth =
    run === 'across' ? { row: clothWidth, depth: clothLength } : { row: clothLength, depth: clothWidth }
  return planRows(needs, cloth, torn ? TORN_EDGE : 0) ?? 'all-seam'
}
