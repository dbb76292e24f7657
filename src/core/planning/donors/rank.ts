import type { ClothMatch } from '../cloth-match.ts'
import type { StretchStanding } from '../stretch-doubt.ts'
import { COLOUR_MATCHES } from './colour.ts'
import type { DonorRow, DonorVerdict } from './row.ts'

/** Best first. What is undecided may still come to fit. */
const VERDICTS: readonly DonorVerdict[] = ['fits', 'undecided', 'not-found', 'cannot']

/** Best first; pieces that need no stretch are as well served as can be. */
const STRETCHES: readonly (StretchStanding | null)[] = [null, 'sure', 'barely', 'just-under', 'unmeasured']

/** Best first: a cloth that is made otherwise than the pattern's may still do. */
const MATCHES: readonly ClothMatch['as'][] = ['meant', 'not-said', 'other']

/** Waste that differs by less than this share of what the pieces take counts as the same. */
const WASTE_STEP = 0.25

/** What of a row its rank hangs on. */
export type Ranked = Pick<
  DonorRow,
  'verdict' | 'missing' | 'match' | 'stretch' | 'colour' | 'waste' | 'price' | 'spoils'
>

/**
 * What a row is ranked by, most important first, each the less the better: verdict, what is missing, how the cloth is made, how the stretch stands, colour, waste in
 * steps, price (unknown after known), good cloth spoilt, waste to the last mm². Keys of rows for the same pieces, or for
 * parts of one project, may be added up.
 *
 * @param area Of the pieces asked, mm².
 */
export function rankKeys(row: Ranked, area: number): readonly number[] {
  return [
    VERDICTS.indexOf(row.verdict),
    row.missing,
    MATCHES.indexOf(row.match?.as ?? 'meant'),
    Math.max(0, STRETCHES.indexOf(row.stretch) - 1),
    COLOUR_MATCHES.indexOf(row.colour),
    Math.floor(row.waste / (WASTE_STEP * area)),
    row.price === null ? 1 : 0,
    row.price ?? 0,
    row.spoils,
    row.waste,
  ]
}

/** Negative if the first keys are better. */
export function compareKeys(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    const difference = (a[i] as number) - (b[i] as number)
    if (difference !== 0) return difference
  }
  return 0
}

/** The rows, best first; equal ones by their ids, so that the order does not hang on which came first. */
export function ranked(rows: readonly DonorRow[], area: number): readonly DonorRow[] {
  return rows
    .map((row) => ({ row, keys: rankKeys(row, area) }))
    .sort((a, b) => compareKeys(a.keys, b.keys) || (a.row.donor < b.row.donor ? -1 : 1))
    .map(({ row }) => row)
}
