import type { Pattern } from '../../core/patterns/pattern.ts'
import type { YieldAsk } from '../state/stash-yield.ts'
import { stashWords } from './en/stash.ts'
import { writeNumber } from './format.ts'
import { patternName, pieceName } from './pattern-words.ts'

const texts = stashWords.wouldYield

/** What can be asked of a pattern in a size. */
export interface YieldChoice extends Pick<YieldAsk, 'version' | 'piece'> {
  readonly label: string
}

/** Each version whole, and each piece by itself, of the first version that takes it. */
export function yieldChoices(pattern: Pattern): readonly YieldChoice[] {
  const { versions, pieces } = pattern
  const whole = versions.map(({ id, name }) => ({
    version: id,
    piece: null,
    label: versions.length > 1 ? texts.wholeOf(name) : texts.whole,
  }))
  const single = pieces.flatMap((piece) => {
    const version = versions.find((each) => each.pieces.includes(piece.id))
    if (!version) return []
    const name = pieceName(pattern, piece)
    const label = piece.copies > 1 ? texts.copies(name, writeNumber(piece.copies)) : name
    return [{ version: version.id, piece: piece.id, label }]
  })
  return [...whole, ...single]
}

export function isChosen({ version, piece }: YieldChoice, ask: YieldAsk): boolean {
  return piece === ask.piece && (piece !== null || version === ask.version)
}

/** “Boxer shorts, size M: Leg, 2 of it”. */
export function askedInWords(pattern: Pattern, ask: YieldAsk): string {
  const choice = yieldChoices(pattern).find((each) => isChosen(each, ask))
  return texts.asked(patternName(pattern), choice?.label ?? texts.whole, ask.size)
}
