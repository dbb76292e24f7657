/** The words of a colour as she wrote it, small letters, in her order, each once: “navy, white”, “navy”, “white”. */
export function colourWords(colour: string): readonly string[] {
  return [...new Set(colour.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [])]
}

/**
 * The fibres that a label names, small letters, in its order, each once. Shares and marks part them, so that
 * “95 % cotton, 5 % elastane” and “cotton/elastane 95/5” name the same two.
 */
export function fibreNames(fibres: string): readonly string[] {
  const names = fibres
    .toLowerCase()
    .split(/[^\p{L}\p{M}\s'’-]+/u)
    .map((name) => name.trim().replace(/\s+/g, ' '))
  return [...new Set(names.filter((name) => /\p{L}/u.test(name)))]
}

/** What was said of how many. */
export interface Said {
  readonly text: string
  readonly count: number
}

/** Everything said in any of the lists, with how many of them say it: the most said first, equals by the alphabet. */
export function saidOf(lists: Iterable<readonly string[]>): readonly Said[] {
  const counts = new Map<string, number>()
  for (const list of lists) for (const text of list) counts.set(text, (counts.get(text) ?? 0) + 1)
  return [...counts]
    .map(([text, count]) => ({ text, count }))
    .sort((a, b) => b.count - a.count || a.text.localeCompare(b.text))
}
