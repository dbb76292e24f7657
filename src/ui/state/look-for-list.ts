import type { ClothRole, Stretch } from '../../core/base/terms.ts'
import { type LabelSize, MEASURED_KINDS, type MeasuredKind } from '../../core/garments/index.ts'
import type { KindBrief, TwoMeasures } from '../../core/planning/shopping-brief/brief.ts'

/** What was found out of one kind of garment: a brief without its lays, which would fill the store. */
export interface Figures {
  readonly kind: MeasuredKind
  readonly stretch: Stretch
  readonly enough: readonly TwoMeasures[]
  readonly tooSmall: readonly TwoMeasures[]
  readonly none: boolean
  readonly oneWay: boolean
  readonly label: LabelSize | null
}

/** One thing she wants to find cloth for. */
export interface LookedFor {
  readonly id: string
  /** Id of the pattern. */
  readonly pattern: string
  readonly version: string
  readonly size: string
  /** The only cloth role it shall serve; null: all of them. */
  readonly role: ClothRole | null
  /** What stands on the card, so that it can be read when the pattern is gone. */
  readonly title: string
  readonly detail: string
  /** What the figures hang on; others count no more. */
  readonly given: string
  readonly figures: readonly Figures[]
}

export interface LookForList {
  readonly things: readonly LookedFor[]
  /** Kinds of garment she looks among. */
  readonly kinds: readonly MeasuredKind[]
}

export const EMPTY_LIST: LookForList = { things: [], kinds: MEASURED_KINDS }

export type Choice = Pick<LookedFor, 'pattern' | 'version' | 'size' | 'role'>

/** The list with the thing on top; one that is on it already only moves there. */
export function withThing(list: LookForList, thing: LookedFor): LookForList {
  const before = list.things.find((other) => isSame(other, thing))
  const others = list.things.filter((other) => other !== before)
  return { ...list, things: [before ?? thing, ...others] }
}

function isSame(one: Choice, other: Choice): boolean {
  return (['pattern', 'version', 'size', 'role'] as const).every((key) => one[key] === other[key])
}

/** With these figures in the place of those of the same kind, which hang on something else if `given` is another. */
export function withFigures(list: LookForList, id: string, given: string, figures: Figures): LookForList {
  const things = list.things.map((thing) => {
    if (thing.id !== id) return thing
    const kept = thing.given === given ? thing.figures.filter(({ kind }) => kind !== figures.kind) : []
    return { ...thing, given, figures: [...kept, figures] }
  })
  return { ...list, things }
}

/** The figures of a brief, to be stored and shown. */
export function figuresOf({ kind, stretch, enough, tooSmall, none, oneWay, label }: KindBrief): Figures {
  const pair = ({ width, length }: TwoMeasures) => ({ width, length })
  return { kind, stretch, enough: enough.map(pair), tooSmall: tooSmall.map(pair), none, oneWay, label }
}

/** The kinds whose figures are still to be worked out, in the order they are shown. */
export function missingKinds(
  { given, figures }: LookedFor,
  wanted: readonly MeasuredKind[],
  now: string,
): readonly MeasuredKind[] {
  const known = given === now ? figures.map(({ kind }) => kind) : []
  return wanted.filter((kind) => !known.includes(kind))
}
