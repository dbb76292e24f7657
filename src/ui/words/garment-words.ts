import type { Mm } from '../../core/base/units.ts'
import { type Garment, TELLING_MEASURES } from '../../core/garments/index.ts'
import { polygonBox } from '../../core/geometry/index.ts'
import { stashWords } from './en/stash.ts'
import { together, type Units, unitName, writeBare, writePercent } from './format.ts'
import { words } from './words.ts'

const texts = stashWords

/** What a garment is called; null: it is no longer in the stash. */
export function garmentTitle(garment: Garment | null): string {
  if (!garment) return stashWords.garmentGone
  return garment.name.trim() || words.garments.kinds[garment.kind]
}

/** “52 × 64 cm”; for a drawn shape its whole size. Empty while nothing is measured. */
export function measuresInShort(garment: Garment, units: Units): string {
  if (garment.kind !== 'free-outline') {
    const { width, length } = TELLING_MEASURES[garment.kind]
    const [across, along] = [garment.measures[width], garment.measures[length]]
    return across && along ? sizeWords(across, along, units) : ''
  }
  if (!garment.outline || garment.outline.length === 0) return ''
  const { minX, minY, maxX, maxY } = polygonBox(garment.outline)
  return sizeWords(maxX - minX, maxY - minY, units)
}

export function sizeWords(across: Mm, along: Mm, units: Units): string {
  return together(`${texts.by(writeBare(across, units), writeBare(along, units))} ${unitName(units)}`)
}

/** What the cloth is and does, in a few words. */
export function clothWords({ cloth, washed }: Garment): string {
  const { structure, fibres, colour, surface, faces } = cloth
  return [
    ...(colour ? [colour] : []),
    ...(fibres ? [fibres] : []),
    ...(structure === 'unknown' ? [] : [texts.made[structure]]),
    ...stretchWords(cloth),
    ...(surface === 'one-way' ? [texts.pile] : []),
    ...(faces === 2 ? [texts.bothFaces] : []),
    washed ? texts.washed : texts.unwashed,
  ].join(', ')
}

/** The same for a list: colour, how it is made, and how far it stretches across. */
export function clothInShort({ cloth: { colour, structure, stretch } }: Garment): string {
  return [
    ...(colour ? [colour] : []),
    ...(structure === 'unknown' ? [] : [texts.made[structure]]),
    ...(stretch && stretch.across > 0 ? [texts.stretchesAcross(together(writePercent(stretch.across)))] : []),
  ].join(', ')
}

function stretchWords({ stretch }: Garment['cloth']): readonly string[] {
  if (stretch === null) return []
  if (stretch.across === 0 && stretch.along === 0) return [texts.stiff]
  return [texts.stretches(writePercent(stretch.across), writePercent(stretch.along))]
}

/** True if each of these words, as `wordsOf` gives them, begins a word of what is known of the garment. */
export function garmentMatches(garment: Garment, typed: readonly string[]): boolean {
  if (typed.length === 0) return true
  const known = knownWords(garment)
  return typed.every((word) => known.includes(` ${word}`))
}

const wordsKnown = new WeakMap<Garment, string>()

/** A space before each word. Kept, for it takes a while: a changed garment is another object. */
export function knownWords(garment: Garment): string {
  const known = wordsKnown.get(garment)
  if (known !== undefined) return known
  const { name, kind, labelSize, note, place } = garment
  const told = [name, words.garments.kinds[kind], labelSize ?? '', note, place, clothWords(garment)]
  const fresh = wordsOf(told.join(' '))
    .map((word) => ` ${word}`)
    .join('')
  wordsKnown.set(garment, fresh)
  return fresh
}

/** The words of a text, to be compared. */
export function wordsOf(text: string): readonly string[] {
  // Letters with their accents taken off, so that “jérsey” is found by “jersey”.
  return (
    text
      .normalize('NFD')
      .replace(/\p{M}/gu, '')
      .toLocaleLowerCase()
      .match(/[\p{L}\p{N}]+/gu) ?? []
  )
}
