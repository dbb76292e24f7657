import type { Mm } from '../../core/base/units.ts'
import { isByLength, type Notion, type NotionKind, type ToBuy } from '../../core/notions/index.ts'
import { notionWords } from './en/notions.ts'
import { type Units, writeList, writeNumber, writeSmall, writeWithUnit } from './format.ts'
import { words } from './words.ts'

const texts = notionWords

/** What a notion is called while it has no name. */
export function notionName({ name, kind }: Pick<Notion, 'name' | 'kind'>): string {
  return name.trim() || texts.kinds[kind]
}

/** “Elastic, 25 mm wide”. A zip's width is its length. */
export function kindWords(kind: NotionKind, width: Mm | null, units: Units): string {
  const name = texts.kinds[kind]
  if (width === null) return name
  if (kind === 'zip') return texts.long(name, writeWithUnit(width, units))
  if (!isByLength(kind)) return texts.across(name, writeNarrow(width, units))
  if (kind === 'cord' || kind === 'thread') return texts.thick(name, writeNarrow(width, units))
  return texts.wide(name, writeNarrow(width, units))
}

/** The name of the field for a kind's width. */
export function widthName(kind: NotionKind): string {
  if (kind === 'zip') return texts.lengthOfZip
  if (kind === 'cord' || kind === 'thread') return texts.widthOfCord
  return isByLength(kind) ? texts.width : texts.widthOfCount
}

/** Widths of elastics and ribbons are sold in millimetres. */
export function writeNarrow(width: Mm, units: Units): string {
  return units.units === 'cm' && width < 100
    ? `${writeNumber(width)} ${words.parts.mm}`
    : writeSmall(width, { ...units, inchFraction: 16 }, 'nearest')
}

/** How much is owned: “2 lengths, 124 cm in all”, “7”. */
export function ownedWords({ kind, lengths, count }: Notion, units: Units): string {
  if (!isByLength(kind)) return texts.many(count)
  const total = lengths.reduce((sum, length) => sum + length, 0)
  return texts.total(lengths.length, writeWithUnit(total, units, 'down'))
}

/** “2 × 74 cm and 45 cm”: equal lengths together, for cutting. */
export function piecesWords(lengths: readonly Mm[], units: Units): string {
  const written = lengths.map((length) => writeWithUnit(length, units, 'up'))
  return writeList(
    [...new Set(written)].map((each) => {
      const count = written.filter((other) => other === each).length
      return count === 1 ? each : texts.each(writeNumber(count), each)
    }),
  )
}

/** One line of what to buy: “Elastic, 25 mm wide: 90 cm (2 × 45 cm), for “Legs””. */
export function buyWords({ kind, names, width, lengths, count }: ToBuy, units: Units): string {
  const line = texts.buy(
    kindWords(kind, width, units),
    isByLength(kind) ? buyLength(lengths, units) : writeNumber(count),
  )
  const telling = names.filter((name) => name.trim() !== '' && name.trim() !== texts.kinds[kind])
  return telling.length === 0 ? line : texts.buyFor(line, writeList(telling.map(texts.quoted)))
}

function buyLength(lengths: readonly Mm[], units: Units): string {
  const total = writeWithUnit(
    lengths.reduce((sum, length) => sum + length, 0),
    units,
    'up',
  )
  return lengths.length === 1 ? total : texts.buyIn(total, piecesWords(lengths, units))
}
