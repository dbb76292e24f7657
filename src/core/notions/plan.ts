import type { Mm } from '../base/units.ts'
import { cutLengths } from '../cutting-stock/index.ts'
import { isByLength, type Needed } from './needs.ts'
import { NOTION_KINDS, type Notion, type NotionKind, type NotionNeed } from './notion.ts'

/** What is cut from one owned length, or taken of one notion owned by count. */
export interface NotionCut {
  /** Id. */
  readonly notion: string
  /** Millimetres of the owned length, or how many are owned. */
  readonly from: number
  /** By length one entry a piece, in mm; by count one entry a need. */
  readonly takes: readonly { readonly need: string; readonly amount: number }[]
  readonly left: number
}

/** What is owned too little of. */
export interface ToBuy {
  readonly kind: NotionKind
  /** Names of the needs that it is for. */
  readonly names: readonly string[]
  /** null: any. */
  readonly width: Mm | null
  /** Pieces to be cut from what is bought, the longest first; empty for kinds by count. */
  readonly lengths: readonly Mm[]
  readonly count: number
}

export interface NotionPlan {
  readonly cuts: readonly NotionCut[]
  readonly toBuy: readonly ToBuy[]
  /** True: nothing spoils fewer lengths (cutting-stock's score); false: the best that was found in time. */
  readonly proved: boolean
}

/** Colours wanted, by id of the need; a need without any takes every colour. */
export type WantedColours = Readonly<Record<string, string>>

/** An elastic of 25 mm may measure 24 or 26: widths that differ by no more than this are one. */
export const WIDTH_TOLERANCE: Mm = 1

/** An end of elastic or ribbon shorter than this is no use for anything (common practice): the length counts as used up. */
export const SHORTEST_END: Mm = 50

/**
 * Lays what is needed into what is owned: as much as there is room for, so that the fewest good lengths are spoilt and
 * remnants are used up first (CuttingScore has the order). Counts are taken from as few notions as will do.
 */
export function planNotions(
  needed: readonly Needed[],
  owned: readonly Notion[],
  colours: WantedColours = {},
): NotionPlan {
  const plans = NOTION_KINDS.map((kind) =>
    planKind(
      needed.filter(({ need }) => need.kind === kind),
      owned.filter((notion) => notion.kind === kind),
      colours,
    ),
  )
  return {
    cuts: plans.flatMap(({ cuts }) => cuts),
    toBuy: plans.flatMap(({ toBuy }) => toBuy),
    proved: plans.every(({ proved }) => proved),
  }
}

/** Whether a notion will do for a need. One of unknown width does only where any width will. */
export function serves(notion: Notion, need: NotionNeed, colour = ''): boolean {
  if (notion.kind !== need.kind) return false
  const wide =
    need.width === null ||
    (notion.width !== null && Math.abs(notion.width - need.width) <= WIDTH_TOLERANCE + 1e-6)
  // Hooks are hooks, but “other” may be anything.
  const named = need.kind !== 'other' || plain(notion.name) === plain(need.name)
  return wide && named && plain(notion.colour).includes(plain(colour))
}

function plain(text: string): string {
  return text.trim().toLowerCase()
}

/** A piece to cut, or one of a count. */
interface Piece {
  readonly need: NotionNeed
  readonly length: number
}

function planKind(needed: readonly Needed[], owned: readonly Notion[], colours: WantedColours): NotionPlan {
  const pieces = needed.flatMap(piecesOf)
  const stock = owned.flatMap((notion) => lengthsOf(notion).map((length) => ({ notion, length })))
  const [first] = pieces
  if (!first) return { cuts: [], toBuy: [], proved: true }
  const { from, proved } = cutLengths({
    needed: pieces.map(({ length }) => length),
    owned: stock.map(({ length }) => length),
    mayUse: (n, o) => {
      const [piece, held] = [pieces[n], stock[o]]
      return !!piece && !!held && serves(held.notion, piece.need, colours[piece.need.id])
    },
    scrap: isByLength(first.need.kind) ? SHORTEST_END : 0,
  })
  const cuts = stock.flatMap(({ notion, length }, o) => {
    const takes = taken(pieces.filter((_, n) => from[n] === o))
    const left = takes.reduce((rest, { amount }) => rest - amount, length)
    // Sums of tenths come out a hair off.
    return takes.length === 0
      ? []
      : [{ notion: notion.id, from: length, takes, left: Math.max(0, tidy(left)) }]
  })
  return { cuts, toBuy: bought(pieces.filter((_, n) => from[n] === null)), proved }
}

function piecesOf({ need, lengths, count }: Needed): readonly Piece[] {
  return isByLength(need.kind)
    ? lengths.map((length) => ({ need, length }))
    : Array.from({ length: count }, () => ({ need, length: 1 }))
}

function lengthsOf({ kind, lengths, count }: Notion): readonly number[] {
  return (isByLength(kind) ? lengths : [count]).filter((length) => length > 0)
}

/** Pieces as they are cut, those of one need together; counted ones added up. */
function taken(pieces: readonly Piece[]): NotionCut['takes'] {
  const [first] = pieces
  if (!first || isByLength(first.need.kind))
    return pieces.map(({ need, length }) => ({ need: need.id, amount: length }))
  const ids = [...new Set(pieces.map(({ need }) => need.id))]
  return ids.map((id) => ({ need: id, amount: pieces.filter(({ need }) => need.id === id).length }))
}

/** One line for each kind and width. */
function bought(pieces: readonly Piece[]): readonly ToBuy[] {
  const lineOf = ({ need }: Piece) => `${need.width} ${need.kind === 'other' ? plain(need.name) : ''}`
  return [...new Set(pieces.map(lineOf))].map((line) => {
    const alike = pieces.filter((piece) => lineOf(piece) === line)
    const { kind, width } = (alike[0] as Piece).need
    const names = [...new Set(alike.map(({ need }) => need.name))]
    const lengths = alike.map(({ length }) => length).sort((a, b) => b - a)
    return isByLength(kind)
      ? { kind, names, width, lengths, count: 0 }
      : { kind, names, width, lengths: [], count: alike.length }
  })
}

function tidy(length: number): number {
  return Math.round(length * 10_000) / 10_000
}
