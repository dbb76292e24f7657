import type { ClothRole } from '../base/terms.ts'
import type { Mm } from '../base/units.ts'
import type { Pattern } from '../patterns/pattern.ts'

/** A pattern in one version and size that is being made, with what it is made of. */
export interface Project {
  readonly id: string
  readonly name: string
  /** As it was when the project began, with the changes made for it: what becomes of the pattern later does not touch it. */
  readonly pattern: Pattern
  /** Id of the version. */
  readonly version: string
  readonly size: string
  /** Least gap between pieces; the larger of this and the pattern's counts. */
  readonly clearance: Mm
  /** Colours wanted, by role, in her own words. A role without any takes every colour. */
  readonly colours: Readonly<Record<ClothRole, string>>
  /** Roles whose pieces may come from several cloths; the pieces of every other role stay in one. */
  readonly blocked: readonly ClothRole[]
  /** The new cloth that it would else be cut from, to tell what is saved; null: she has not said. */
  readonly newCloth: NewCloth | null
  /** Lengths and counts of notions already cut or taken for it. */
  readonly taken: readonly TakenNotion[]
  /** Sewn, and off the list of what is under way. */
  readonly finished: boolean
  readonly note: string
}

export interface NewCloth {
  /** In the user's money; null: unknown. */
  readonly pricePerMetre: number | null
  readonly width: Mm
}

/** So much of a notion was taken for a need of the pattern. */
export interface TakenNotion {
  /** Id of the need in the pattern. */
  readonly need: string
  /** Id of the notion owned. */
  readonly notion: string
  /** Millimetres of what is owned by length, else pieces. */
  readonly amount: number
}
