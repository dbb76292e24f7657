import { signal } from '@preact/signals'
import { type Garment, NOT_YET_OWNED } from '../../core/garments/index.ts'
import type { CheckAnswer, CheckQuestion } from '../../core/planning/check.ts'
import { garmentOf } from './check-draft.ts'
import { beginNext, draft, kind, query } from './check-state.ts'
import { keepFromDraft, storeTrouble } from './keeper.ts'
import { live } from './live-check.ts'
import { newId } from './new-id.ts'
import { addGarment, changeGarment, garmentById, openStash } from './stash-state.ts'

/** The garment kept last, to add to while she likes. */
export const kept = signal<Garment | null>(null)

/** The lay that it was kept for, when what she makes fits: its places can be reserved at once. */
export const keptLay = signal<{ readonly question: CheckQuestion; readonly answer: CheckAnswer } | null>(null)

/**
 * Keeps the garment under check in the stash and begins the next; one that was kept before is brought up to date.
 * False when the device refused; nothing is lost then.
 */
export async function keepThis(name: string): Promise<boolean> {
  const { across, along } = draft.value.stretch
  const stretch = across === null && along === null ? null : { across: across ?? 0, along: along ?? 0 }
  const garment = kind.value && garmentOf(draft.value, kind.value, stretch)
  if (!garment) return false
  const before = await keptBefore()
  const named = before ? updated(before, garment) : { ...garment, id: newId(), name }
  try {
    await keepFromDraft(named)
  } catch (error) {
    storeTrouble.value = error
    return false
  }
  kept.value = named
  keptLay.value = layNow(named)
  beginNext()
  return true
}

function layNow(garment: Garment): typeof keptLay.value {
  const [asked, verdict] = [query.value, live.value]
  const fits = verdict.state === 'answered' && verdict.answer.lay.verdict === 'fits' && !verdict.ifStretch
  return asked.ask && fits ? { question: { ...asked.question, garment }, answer: verdict.answer } : null
}

async function keptBefore(): Promise<Garment | null> {
  const { garment } = draft.value
  if (garment === null) return null
  await openStash()
  return garmentById(garment)
}

/** The kept garment with what the check tells of it; what the check does not ask stays. */
function updated(before: Garment, checked: Garment): Garment {
  const owned = Object.keys(NOT_YET_OWNED) as (keyof typeof NOT_YET_OWNED)[]
  const { id, name, role } = before
  return { ...checked, ...Object.fromEntries(owned.map((field) => [field, before[field]])), id, name, role }
}

/** Adds to the garment just kept, at every change. */
export async function addToKept(change: Partial<Garment>): Promise<void> {
  if (kept.value === null) return
  const now = { ...kept.value, ...change }
  kept.value = now
  await openStash()
  // By now it may have photos that are not known here.
  if (garmentById(now.id)) changeGarment(now.id, change)
  else addGarment(now)
}
