import type { ClothRole } from '../../core/base/terms.ts'
import type { Percent } from '../../core/base/units.ts'
import {
  type Cloth,
  type Garment,
  type GarmentKind,
  isQuestion,
  type KindId,
  type LabelSize,
  type MarkedFlaw,
  type MeasureSpec,
  type Measures,
  measureFaults,
  NOT_YET_OWNED,
  type Opening,
  outlineFaults,
  startingMeasures,
  type Traits,
} from '../../core/garments/index.ts'
import type { Polygon } from '../../core/geometry/types.ts'
import type { Pattern, PatternPiece } from '../../core/patterns/pattern.ts'
import type { FramedPrint } from './keep-wishes.ts'

/** Screens of the check after the start, in order. */
export const STEPS = ['measures', 'cloth', 'flaws', 'verdict'] as const
export type Step = (typeof STEPS)[number]

/** Everything she has told the check so far. Stored at every change, so that a killed tab loses nothing. */
export interface CheckDraft {
  readonly pattern: string | null
  readonly version: string
  readonly size: string
  readonly kind: KindId | null
  readonly labelSize: LabelSize | null
  /** Typed figures of every kind she looked at; a kind takes those it has. */
  readonly measures: Measures
  /** Text typed into a measure that is no length yet. */
  readonly unread: Readonly<Record<string, string>>
  readonly traits: Traits
  readonly opening: Opening
  readonly outline: Polygon | null
  readonly stretch: { readonly across: Percent | null; readonly along: Percent | null }
  readonly cloth: Omit<Cloth, 'stretch'>
  /** Cloth roles of the pattern that shall not come from this garment. */
  readonly otherRoles: readonly ClothRole[]
  readonly flaws: readonly MarkedFlaw[]
  /** Ids of the pieces whose hem shall be the garment's own. */
  readonly ownHem: readonly string[]
  readonly print: FramedPrint | null
  /** Id of the kept garment that is checked again; null: one that is not kept yet. */
  readonly garment: string | null
  /** Where she was; null: at the start. */
  readonly step: Step | null
}

export const EMPTY_DRAFT: CheckDraft = {
  pattern: null,
  version: '',
  size: '',
  kind: null,
  labelSize: null,
  measures: {},
  unread: {},
  traits: {},
  opening: 'cut',
  outline: null,
  stretch: { across: null, along: null },
  cloth: { structure: 'unknown', surface: 'plain', pile: 'down', faces: 1, fibres: '', colour: '' },
  otherRoles: [],
  flaws: [],
  ownHem: [],
  print: null,
  garment: null,
  step: null,
}

/** The next garment for the same pattern, version and size. */
export function nextGarment({ pattern, version, size }: CheckDraft): CheckDraft {
  return { ...EMPTY_DRAFT, pattern, version, size }
}

/** True once there is something of a garment that walking away would lose. */
export function isUnderWay(draft: CheckDraft): boolean {
  return draft.kind !== null && draft.step !== null
}

/** The measures that the kind asks for, made as this one is. */
export function askedMeasures(draft: CheckDraft, kind: GarmentKind): readonly MeasureSpec[] {
  const traits = traitsOf(draft, kind)
  return kind.measures.filter(({ when }) => when === undefined || traits[when] === true)
}

/** The measures of the kind, typed ones over those usual for the label's size. null: one is missing or impossible. */
export function measuresOf(draft: CheckDraft, kind: GarmentKind): Measures | null {
  const asked = askedMeasures(draft, kind)
  const untold = asked.some(({ id }) => draft.measures[id] === undefined && draft.labelSize === null)
  if (untold || asked.some(({ id }) => draft.unread[id] !== undefined)) return null
  const measures = measuresToDraw(draft, kind)
  return measureFaults(kind, measures, traitsOf(draft, kind)).every(isQuestion) ? measures : null
}

/** Measures good enough to draw: what is missing is taken from the label's size, or from a middling one. */
export function measuresToDraw(draft: CheckDraft, kind: GarmentKind): Measures {
  const typed = kind.measures.flatMap(({ id }) => {
    const value = draft.measures[id]
    return value === undefined ? [] : [[id, value] as const]
  })
  return { ...startingMeasures(kind, draft.labelSize), ...Object.fromEntries(typed) }
}

/** Traits told, over the usual ones of the kind. */
export function traitsOf(draft: CheckDraft, kind: GarmentKind): Traits {
  return Object.fromEntries(kind.traits.map(({ id, usual }) => [id, draft.traits[id] ?? usual]))
}

/** True while at least one measure is the label's and not the tape's. */
export function goesByUsual(draft: CheckDraft, kind: GarmentKind): boolean {
  return askedMeasures(draft, kind).some(({ id }) => draft.measures[id] === undefined)
}

/** The cloth roles that a version needs, the main one first as the pattern lists its pieces. */
export function rolesOf(pattern: Pattern, version: string): readonly ClothRole[] {
  return [...new Set(piecesOfVersion(pattern, version).map(({ role }) => role))]
}

function piecesOfVersion(pattern: Pattern, version: string): readonly PatternPiece[] {
  const wanted = pattern.versions.find(({ id }) => id === version)?.pieces ?? []
  return pattern.pieces.filter(({ id }) => wanted.includes(id))
}

/** Which ways of stretching decide something for this version: those needed, and the other one where a piece may lie crosswise. */
export function stretchAsked(
  pattern: Pattern,
  version: string,
  otherRoles: readonly ClothRole[],
): { across: Percent; along: Percent; both: boolean } {
  const pieces = piecesOfVersion(pattern, version).filter(({ role }) => !otherRoles.includes(role))
  const across = Math.max(0, ...pieces.map(({ needs }) => needs.across))
  const along = Math.max(0, ...pieces.map(({ needs }) => needs.along))
  const crosswise = pieces.some(
    ({ grain, needs }) => grain !== 'along' && (needs.across > 0 || needs.along > 0),
  )
  return { across, along, both: crosswise || along > 0 }
}

/** The stretch told, or null while a figure that decides something is missing. */
export function stretchOf(draft: CheckDraft, asked: ReturnType<typeof stretchAsked>): Cloth['stretch'] {
  const { across, along } = draft.stretch
  if (asked.across > 0 && across === null) return null
  if (asked.both && (along === null || across === null)) return null
  if (across === null && along === null) return null
  return { across: across ?? 0, along: along ?? 0 }
}

/** The garment as told, nameless. null while a measure is missing or impossible. */
export function garmentOf(draft: CheckDraft, kind: GarmentKind, stretch: Cloth['stretch']): Garment | null {
  const measures = measuresOf(draft, kind)
  if (measures === null) return null
  if (kind.id === 'free-outline' && (draft.outline === null || outlineFaults(draft.outline).length > 0))
    return null
  return garmentWith(draft, kind, measures, stretch)
}

/** The garment as far as it is told, for drawings: what is missing is taken as usual. */
export function garmentToDraw(draft: CheckDraft, kind: GarmentKind): Garment {
  return garmentWith(draft, kind, measuresToDraw(draft, kind), null)
}

function garmentWith(
  draft: CheckDraft,
  kind: GarmentKind,
  measures: Measures,
  stretch: Cloth['stretch'],
): Garment {
  return {
    id: 'under-check',
    name: '',
    kind: kind.id,
    labelSize: draft.labelSize,
    measures,
    traits: traitsOf(draft, kind),
    opening: draft.opening,
    outline: kind.id === 'free-outline' ? draft.outline : null,
    cloth: { ...draft.cloth, stretch },
    role: null,
    flaws: draft.flaws,
    ...NOT_YET_OWNED,
  }
}
