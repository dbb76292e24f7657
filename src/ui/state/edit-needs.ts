import type { NotionNeed } from '../../core/notions/index.ts'
import type { Pattern } from '../../core/patterns/index.ts'
import { change } from './edit-pattern.ts'
import { newId } from './new-id.ts'
import { offerUndo } from './undo.ts'

/** What her own patterns take of notions, as she types it in; stored at every change. */

/** A change of a need; undefined takes a part away. */
export type NeedChange = { readonly [Part in keyof NotionNeed]?: NotionNeed[Part] | undefined }

/** Adds a need of one elastic, with nothing typed yet, and gives its id. */
export function addNeed(pattern: Pattern): string {
  const id = newId()
  const need: NotionNeed = {
    id,
    kind: 'elastic',
    name: '',
    width: null,
    amount: { form: 'formula', each: 1, edge: {}, ratio: 0.9, extra: 20 },
  }
  change(pattern.id, (now) => ({ ...now, notions: [...(now.notions ?? []), need] }))
  return id
}

export function changeNeed(pattern: string, id: string, part: NeedChange): void {
  change(pattern, (now) => ({
    ...now,
    notions: (now.notions ?? []).map((need) => (need.id === id ? withPart(need, part) : need)),
  }))
}

export function dropNeed(pattern: Pattern, need: NotionNeed, said: string): void {
  const at = (pattern.notions ?? []).indexOf(need)
  change(pattern.id, (now) => ({ ...now, notions: (now.notions ?? []).filter(({ id }) => id !== need.id) }))
  offerUndo(said, () =>
    change(pattern.id, (now) => ({ ...now, notions: (now.notions ?? []).toSpliced(at, 0, need) })),
  )
}

function withPart(need: NotionNeed, part: NeedChange): NotionNeed {
  const changed = Object.entries({ ...need, ...part }).filter(([, value]) => value !== undefined)
  return Object.fromEntries(changed) as unknown as NotionNeed
}
