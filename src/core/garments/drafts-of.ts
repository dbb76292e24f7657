import type { PanelDraft } from './drafting/draft.ts'
import { isQuestion, measureFaults } from './faults.ts'
import type { Garment } from './garment.ts'
import { kindOf } from './kinds.ts'

/** The panels a garment is sewn from; none while a measure is missing or impossible. */
export function draftsOf({ kind, measures, traits }: Garment): readonly PanelDraft[] {
  if (!measureFaults(kindOf(kind), measures, traits).every(isQuestion)) return []
  return kindOf(kind).drafts(measures, traits)
}
