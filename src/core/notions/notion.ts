import type { Mm } from '../base/units.ts'

/** Sold and owned by length; the others by count. */
export const LENGTH_KINDS = ['elastic', 'ribbon', 'lace', 'binding', 'cord', 'thread'] as const
export const COUNT_KINDS = ['ring', 'slide', 'zip', 'button', 'hook', 'other'] as const
export const NOTION_KINDS = [...LENGTH_KINDS, ...COUNT_KINDS] as const
export type LengthKind = (typeof LENGTH_KINDS)[number]
export type CountKind = (typeof COUNT_KINDS)[number]
export type NotionKind = LengthKind | CountKind

/** An elastic, trim or fastening that is owned. */
export interface Notion {
  readonly id: string
  readonly kind: NotionKind
  readonly name: string
  /** Of a zip its length; null: unknown. */
  readonly width: Mm | null
  readonly colour: string
  /** Pieces owned, for the kinds with a length. */
  readonly lengths: readonly Mm[]
  /** How many are owned, for the kinds by count. */
  readonly count: number
  /** In the user's money, for all of it; null: unknown. */
  readonly price: number | null
  readonly place: string
  readonly note: string
}

/** What a pattern needs of a notion, for one garment made. */
export interface NotionNeed {
  readonly id: string
  readonly kind: NotionKind
  readonly name: string
  /** null: any. */
  readonly width: Mm | null
  readonly amount: NeedAmount
  /**
   * Of an elastic sewn into a ring: the girth that must pass through it to put the garment on, by size (hips for a waist,
   * heel and instep for a trouser leg); absent: none.
   */
  readonly passes?: Readonly<Record<string, Mm>>
  /** Ids of the versions that need it; absent: all. */
  readonly versions?: readonly string[]
}

/**
 * How much, by size. `each` counts: so many equal lengths, or so many pieces. A formula is of the trade: cut length =
 * edge × ratio + extra, with the edge's finished length by size (elastic: the body or hem it holds; extra: its overlap).
 */
export type NeedAmount =
  | { readonly form: 'count'; readonly count: Readonly<Record<string, number>> }
  | { readonly form: 'table'; readonly each: number; readonly length: Readonly<Record<string, Mm>> }
  | {
      readonly form: 'formula'
      readonly each: number
      readonly edge: Readonly<Record<string, Mm>>
      readonly ratio: number
      readonly extra: Mm
    }
