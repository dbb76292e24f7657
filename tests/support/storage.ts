import 'fake-indexeddb/auto'
import { onTestFinished } from 'vitest'
import { failed, ok } from '../../src/core/base/result.ts'
import type { Garment } from '../../src/core/garments/garment.ts'
import type { Pattern } from '../../src/core/patterns/pattern.ts'
import { readCut, readOffcut } from '../../src/readers/model/cut.ts'
import { readNotion } from '../../src/readers/model/notion.ts'
import { readPhoto } from '../../src/readers/model/photo.ts'
import { readProject } from '../../src/readers/model/project.ts'
import { readReservation } from '../../src/readers/model/reservation.ts'
import { closeStore, openStore, type Store, type StoreOptions } from '../../src/storage/open-store.ts'

/** What the tests keep as a draft. */
export interface TestDraft {
  readonly kind: string
}

/** Lets everything through that has a name or a kind, so that a test can store what does not pass. */
export const TEST_GATES: StoreOptions<TestDraft>['gates'] = {
  garments: (raw) => gateByText<Garment>(raw, 'name'),
  patterns: (raw) => gateByText<Pattern>(raw, 'name'),
  projects: readProject,
  reservations: readReservation,
  cuts: readCut,
  offcuts: readOffcut,
  notions: readNotion,
  photos: readPhoto,
  draft: (raw) => gateByText<TestDraft>(raw, 'kind'),
}

function gateByText<T>(raw: unknown, field: string) {
  const value = (raw as Record<string, unknown> | null)?.[field]
  return typeof value === 'string' ? ok(raw as T) : failed([{ field, message: 'must be text' }])
}

let stores = 0

/** A name no other test uses. */
export function freshName(): string {
  stores += 1
  return `store-${stores}`
}

/** Opens a store that is closed when the test ends; a new, empty one unless a name is given. */
export async function testStore(options: Partial<StoreOptions<TestDraft>> = {}): Promise<Store<TestDraft>> {
  const store = await openStore({ gates: TEST_GATES, name: freshName(), ...options })
  onTestFinished(() => closeStore(store))
  return store
}

export { testGarment, testPattern } from './records.ts'
