/** More than any stash reaches; a file that claims more is refused before anything of it is inflated. Bytes. */
export const BACKUP_LIMITS = {
  file: 1_000_000_000,
  json: 100_000_000,
  photo: 20_000_000,
  photos: 20_000,
  /** A picture is compressed already: one that shrinks to less than this share of its size is none. */
  leastShare: 0.2,
} as const
