export const measureAgainWords = {
  title: 'Measure these again',
  titleNear: 'One measure may save it',
  hint: 'It fits or fails by them. Lay the garment smooth and take each once more.',
  hintNear: 'If one of them is a little larger than you typed, it fits.',
  looking: 'Looking which measures it hangs on…',
  none: 'It hangs on no single measure, but on all of them a little.',
  lost: (by: string) => `With ${by} less it cannot be cut.`,
  notFound: (by: string) => `With ${by} less no way was found.`,
  scant: (by: string) => `With ${by} less, little is left to spare.`,
  saved: (by: string) => `With ${by} more it fits.`,
} as const
