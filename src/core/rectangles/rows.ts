import type { Mm } from '../base/units.ts'
import { cutLengths } from '../cutting-stock/index.ts'
import { stripsToJoin } from '../patterns/index.ts'
import type { StripNeed } from './strip-need.ts'

/** A rectangle of cloth. Strips run along `row`; rows lie one after another along `depth`. */
export interface ClothToCut {
  readonly row: Mm
  readonly depth: Mm
}

/** Strips cut or torn right across the cloth, side by side in one row. */
export interface Row {
  /** Of the cloth it takes, what tearing spoils included. */
  readonly height: Mm
  readonly strips: readonly { readonly need: number; readonly length: Mm }[]
}

export interface RowPlan {
  /** By need: the cut lengths of the strips that one copy is joined of, the whole rows first. */
  readonly strips: readonly (readonly Mm[])[]
  readonly rows: readonly Row[]
  /** Depth that the rows take. */
  readonly used: Mm
  readonly fits: boolean
  /** True: no other sharing of the rows takes fewer. */
  readonly proved: boolean
}

/** A torn edge ripples and frays for about this much, to be trimmed off (common practice). */
export const TORN_EDGE: Mm = 5

/**
 * How the strips come out of the cloth: each need in the fewest strips that reach (stripsToJoin), the last no longer than
 * it must be, and the short ends of equal height sharing rows so that the fewest rows are taken. `edge` is what each long
 * edge loses: 0 when cut, TORN_EDGE when torn, which follows the grain exactly. null: a row is all seam allowance.
 */
export function planRows(needs: readonly StripNeed[], cloth: ClothToCut, edge: Mm = 0): RowPlan | null {
  const strips = needs.map((need) => stripsOf(need, cloth.row))
  if (strips.some((each) => each === null)) return null
  const joined = strips.map((each) => each ?? [])
  const heights = [...new Set(needs.map(({ height }) => height))].sort((a, b) => b - a)
  const plans = heights.map((height) => {
    const alike = needs.flatMap((need, k) => {
      if (need.height !== height) return []
      return Array.from({ length: need.copies }, () => joined[k] ?? []).flatMap((copy) =>
        copy.map((length) => ({ need: k, length })),
      )
    })
    return { height: height + 2 * edge, ...shareRows(alike, cloth.row) }
  })
  const rows = plans.flatMap((plan) => plan.rows.map((each) => ({ height: plan.height, strips: each })))
  const used = rows.reduce((sum, { height }) => sum + height, 0)
  return {
    strips: joined,
    rows,
    used,
    // Sums of tenths come out a hair off.
    fits: used <= cloth.depth + 1e-6,
    proved: plans.every(({ proved }) => proved),
  }
}

/** Whole rows and a last strip: n strips make flat + 2 allowances a strip. null: no number of strips is enough. */
function stripsOf({ flat, endAllowance }: StripNeed, row: Mm): readonly Mm[] | null {
  const count = stripsToJoin(flat, row, endAllowance)
  if (!Number.isFinite(count)) return null
  const last = flat + 2 * endAllowance * count - row * (count - 1)
  return [...Array<Mm>(count - 1).fill(row), last]
}

interface Strip {
  readonly need: number
  readonly length: Mm
}

/** Strips of one height into the fewest rows: whole rows by themselves, the others as lengths to be cut from rows. */
function shareRows(
  strips: readonly Strip[],
  row: Mm,
): { rows: readonly (readonly Strip[])[]; proved: boolean } {
  const whole = strips.filter(({ length }) => length >= row)
  const parts = strips.filter(({ length }) => length < row)
  const { from, proved } = cutLengths({
    needed: parts.map(({ length }) => length),
    owned: parts.map(() => row),
    scrap: Number.POSITIVE_INFINITY,
  })
  const shared = parts.map((_, o) => parts.filter((__, n) => from[n] === o)).filter((each) => each.length > 0)
  return { rows: [...whole.map((strip) => [strip]), ...shared], proved }
}
