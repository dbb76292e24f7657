import type { ClothMake, Stretch } from '../../core/base/terms.ts'
import type { Percent } from '../../core/base/units.ts'
import { type MeasuredKind, TELLING_MEASURES, usualMake } from '../../core/garments/index.ts'
import type { Pattern } from '../../core/patterns/index.ts'
import type { TwoMeasures } from '../../core/planning/shopping-brief/brief.ts'
import type { Choice, Figures } from '../state/look-for-list.ts'
import { lookForWords } from './en/look-for.ts'
import { together, type Units, writePercent, writeWithUnit } from './format.ts'
import { meantWords } from './match-words.ts'
import { roleName } from './pattern-words.ts'
import { words } from './words.ts'

const texts = lookForWords

/** What is told of one kind of garment: the figures, and what stands under them. */
export interface FiguresWords {
  readonly enough: readonly string[]
  readonly beside: readonly string[]
}

/**
 * The figures as one says them in the shop: “From 54 cm pit to pit and 62 cm long”. `cloths`: how cloth is made that the pattern is
 * for, told where such garments are usually made otherwise; empty: not said.
 */
export function figuresWords(
  figures: Figures,
  units: Units,
  cloths: readonly ClothMake[] = [],
): FiguresWords {
  const { kind, enough, label, oneWay } = figures
  const [first, ...others] = enough
  if (!first) return noneWords(figures, units)
  const pair = ({ width, length }: TwoMeasures) =>
    [widthWords(kind, width, units), lengthWords(kind, length, units)] as const
  // Every width in which cloth is sold stands by itself.
  const [least, further] = kind === 'cloth' ? [texts.wideFrom, texts.wideFrom] : [texts.from, texts.orFrom]
  return {
    enough: [least(...pair(first)), ...others.map((other) => further(...pair(other)))],
    beside: [
      ...(label === null ? [] : [texts.label(label)]),
      ...openWords(figures, first, units),
      ...(oneWay ? [] : [texts.larger]),
      ...usuallyWords(kind, cloths),
    ],
  }
}

/** That most of the kind are not the cloth it is for. */
function usuallyWords(kind: MeasuredKind, cloths: readonly ClothMake[]): readonly string[] {
  const [usual] = usualMake(kind)
  if (usual === undefined || cloths.length === 0 || cloths.includes(usual)) return []
  return [texts.usually(words.verdict.match.madeSome[usual], meantWords(cloths))]
}

function noneWords({ kind, none, tooSmall: [proved] }: Figures, units: Units): FiguresWords {
  if (none) return { enough: [texts.noneProved], beside: [] }
  const told =
    proved && kind !== 'cloth' ? [texts.tooSmall(together(writeWithUnit(proved.width, units)))] : []
  return { enough: [texts.noneFound], beside: told }
}

/** Up to where it is proved too small; between that and what does, nothing is known. */
function openWords(
  { kind, tooSmall: [proved] }: Figures,
  found: TwoMeasures,
  units: Units,
): readonly string[] {
  if (!proved) return []
  const write = (mm: number) => together(writeWithUnit(mm, units))
  if (kind === 'cloth') {
    if (proved.width !== found.width) return []
    return [texts.betweenShort(write(proved.length))]
  }
  return [texts.between(write(proved.width))]
}

export function stretchWords(stretch: Stretch): string {
  const { across, along } = stretch
  const write = (percent: Percent) => together(writePercent(percent))
  if (across > 0 && along > 0) return texts.stretchBoth(write(across), write(along))
  if (across > 0) return texts.stretchAcross(write(across))
  return along > 0 ? texts.stretchAlong(write(along)) : texts.stretchNone
}

function widthWords(kind: MeasuredKind, width: number, units: Units): string {
  const said = together(writeWithUnit(width, units))
  return texts.widths[TELLING_MEASURES[kind].width]?.(said) ?? said
}

function lengthWords(kind: MeasuredKind, length: number, units: Units): string {
  const said = together(writeWithUnit(length, units))
  return texts.lengths[TELLING_MEASURES[kind].length]?.(said) ?? said
}

/** “size M, Short, Lining only”: which of a pattern is meant. */
export function thingDetail({ versions }: Pattern, { size, version, role }: Choice): string {
  const name = versions.length > 1 ? versions.find(({ id }) => id === version)?.name : undefined
  return [
    texts.size(size),
    ...(name ? [name] : []),
    ...(role === null ? [] : [texts.onlyCloth(roleName(role))]),
  ].join(', ')
}
