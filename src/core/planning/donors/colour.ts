import { colourWords } from '../../stash/said-of-cloth.ts'

/** How a donor's colour serves: as wanted or nothing wanted, not known, another one. Best first. */
export const COLOUR_MATCHES = ['as-wanted', 'unknown', 'other'] as const
export type ColourMatch = (typeof COLOUR_MATCHES)[number]

/** A colour in free words against those wanted, any of a list parted by commas: each word of one of them is there. */
export function colourMatch(colour: string, wanted: string): ColourMatch {
  const choices = wanted
    .split(/[,;/]/)
    .map(colourWords)
    .filter(({ length }) => length > 0)
  if (choices.length === 0) return 'as-wanted'
  const has = colourWords(colour)
  if (has.length === 0) return 'unknown'
  return choices.some((words) => words.every((word) => has.includes(word))) ? 'as-wanted' : 'other'
}

/** The poorest match of several roles on one cloth. */
export function poorestMatch(colour: string, wanted: readonly string[]): ColourMatch {
  const ranks = wanted.map((words) => COLOUR_MATCHES.indexOf(colourMatch(colour, words)))
  return COLOUR_MATCHES[Math.max(0, ...ranks)] as ColourMatch
}
