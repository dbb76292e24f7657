/** More than any stash reaches; a file that claims more is refused before anything of it is inflated. Bytes. */
export const BACKUP_LIMITS = {
  file: 1_000_000_000,
  json: 100_000_000,
  photo: 20_000_000,
  /** Of them all together, once they are unpacked. */
  contents: 1_200_000_000,
  photos: 20_000,
  /** A picture is compressed already: one that shrinks to less than this share of its size is none. */
  leastShare: 0.2,
  /**
   * Records have random ids and measured figures, so that their text shrinks to a tenth or so. One that shrinks to less
   * than this share is none, unless it is so small that it does not matter.
   */
  leastJsonShare: 1 / 300,
  smallJson: 4_000_000,
  /** Of JSON: how deep it is nested, how many values it holds, and how many of them in one record. */
  depth: 100,
  values: 10_000_000,
  recordValues: 500_000,
} as const
