import type { Stretch } from '../../core/base/terms.ts'
import type { GarmentKind } from '../../core/garments/kind.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import type { CheckQuestion } from '../../core/planning/check.ts'
import type { Settings } from '../../storage/stores/settings.ts'
import { type CheckDraft, garmentOf, goesByUsual, rolesOf, stretchAsked, stretchOf } from './check-draft.ts'
import { wishesOf } from './keep-wishes.ts'
import type { Missing } from './verdict.ts'

/** More than any pattern asks for. */
const ENDLESS: Stretch = { across: 1000, along: 1000 }

export type CheckQuery =
  | { readonly ask: false; readonly missing: Missing }
  | {
      readonly ask: true
      readonly question: CheckQuestion
      readonly byUsual: boolean
      /** The stretch taken for granted in `question`, because it is needed and has not been told. */
      readonly ifStretch: Stretch | null
      /** The same of cloth that stretches without end, with `ifStretch`: more stretch never allows less, so a "cannot" here is one for this cloth. */
      readonly atBest: CheckQuestion | null
    }

/** What can be asked of the solver with what she has told so far. */
export function queryOf(
  draft: CheckDraft,
  pattern: Pattern | null,
  kind: GarmentKind | null,
  { clearance, stretchDoubt }: Pick<Settings, 'clearance' | 'stretchDoubt'>,
): CheckQuery {
  if (pattern === null || !isInPattern(draft, pattern)) return { ask: false, missing: 'pattern' }
  if (kind === null) return { ask: false, missing: 'measures' }
  const asked = stretchAsked(pattern, draft.version, draft.otherRoles)
  const needed = asked.across > 0 || asked.along > 0
  const told = stretchOf(draft, asked)
  const ifStretch = told === null && needed ? { across: asked.across, along: asked.along } : null
  const garment = garmentOf(draft, kind, told ?? ifStretch)
  if (garment === null) return { ask: false, missing: 'measures' }
  const { version, size } = draft
  const roles = asksOf(draft, pattern)
  // What is taken for granted was not measured, so no gauge can be off.
  const doubted = ifStretch ? {} : { stretchDoubt }
  const question = { pattern, version, size, garment, roles, clearance, ...doubted, ...wishesOf(draft) }
  const best = { ...garment, cloth: { ...garment.cloth, stretch: ENDLESS } }
  return {
    ask: true,
    question,
    atBest: ifStretch && { ...question, garment: best },
    byUsual: goesByUsual(draft, kind),
    ifStretch,
  }
}

/** The roles asked of this garment; null: all that the version has. */
function asksOf({ version, otherRoles }: CheckDraft, pattern: Pattern): CheckQuestion['roles'] {
  const roles = rolesOf(pattern, version)
  const asked = roles.filter((role) => !otherRoles.includes(role))
  return asked.length === roles.length || asked.length === 0 ? null : asked
}

function isInPattern({ version, size }: CheckDraft, pattern: Pattern): boolean {
  return pattern.sizes.includes(size) && pattern.versions.some(({ id }) => id === version)
}
