/** Facts of a photo; its picture is stored beside it. Downscaled, upright, and free of the place where it was taken. */
export interface Photo {
  readonly id: string
  /** CSS pixels of the stored picture. */
  readonly width: number
  readonly height: number
  /** ms since 1970. */
  readonly takenAt: number
}
