import { RowHeights } from './row-heights.ts'

/** Of a row, in pixels, before one was drawn. */
export const GUESS = 130

/** Where a list was left, to be found there again. */
export interface ListPlace {
  /** How far its screen was scrolled, pixels. */
  top: number
  readonly heights: RowHeights
}

export function newPlace(): ListPlace {
  return { top: 0, heights: new RowHeights(GUESS) }
}
