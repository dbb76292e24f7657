/** Longest name in a message, signs. */
const LONGEST = 60

/** A foreign name as a message may repeat it: a longer one ends in an ellipsis. Never parts a pair of surrogates. */
export function shortText(text: string, longest: number = LONGEST): string {
  if (text.length <= longest) return text
  return `${text.slice(0, longest - 1).replace(/[\uD800-\uDBFF]$/, '')}…`
}
