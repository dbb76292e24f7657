import { afterEach, describe, expect, it, vi } from 'vitest'
import { StorageFull, StorageLost } from '../../src/storage/errors.ts'
import { readDraft, writeDraft } from '../../src/storage/stores/draft.ts'
import { keepGarment, putGarment, readGarments } from '../../src/storage/stores/garments.ts'
import { transact } from '../../src/storage/transact.ts'
import { testGarment, testStore } from '../support/storage.ts'

afterEach(() => vi.restoreAllMocks())

async function storeWithDraft() {
  const store = await testStore()
  await writeDraft(store, { kind: 'dress' })
  return store
}

async function expectUntouched(store: Awaited<ReturnType<typeof storeWithDraft>>): Promise<void> {
  vi.restoreAllMocks()
  expect((await readGarments(store)).records).toEqual([])
  expect(await readDraft(store)).toEqual({ ok: true, value: { kind: 'dress' } })
}

describe('keeping a garment', () => {
  it('whose draft cannot be cleared stores nothing', async () => {
    const store = await storeWithDraft()
    vi.spyOn(IDBObjectStore.prototype, 'delete').mockImplementation(() => {
      throw new Error('struck by lightning')
    })
    await expect(keepGarment(store, testGarment())).rejects.toThrow('struck by lightning')
    await expectUntouched(store)
  })

  it('that cannot be copied leaves the draft', async () => {
    const store = await storeWithDraft()
    const uncopyable = testGarment({ note: (() => '') as unknown as string })
    await expect(keepGarment(store, uncopyable)).rejects.toMatchObject({ name: 'DataCloneError' })
    await expectUntouched(store)
  })

  it('cut off between its two steps leaves all as it was', async () => {
    const store = await storeWithDraft()
    const cutOff = transact(store, ['garments', 'drafts'], async (transaction) => {
      const record = { id: 'g1', value: testGarment(), keptAt: 1, changedAt: 1 }
      await transaction.objectStore('garments').put(record)
      transaction.abort()
      await transaction.objectStore('drafts').delete('check')
    })
    await expect(cutOff).rejects.toThrow()
    await expectUntouched(store)
  })
})

describe('a full disk', () => {
  const full = () => new DOMException('no room', 'QuotaExceededError')

  it('met at the write is a StorageFull, and nothing of it is kept', async () => {
    const store = await storeWithDraft()
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
      throw full()
    })
    await expect(keepGarment(store, testGarment())).rejects.toBeInstanceOf(StorageFull)
    await expectUntouched(store)
  })

  it('met only when the transaction is written out is a StorageFull too', async () => {
    const store = await storeWithDraft()
    const put = IDBObjectStore.prototype.put
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      const request = put.apply(this, args)
      // fake-indexeddb's own way to end a transaction for a reason of the device.
      const { _abort } = this.transaction as unknown as { _abort(name: string): void }
      request.addEventListener('success', () => _abort.call(this.transaction, 'QuotaExceededError'))
      return request
    })
    await expect(putGarment(store, testGarment())).rejects.toBeInstanceOf(StorageFull)
    await expectUntouched(store)
  })
})

describe('a connection that is gone', () => {
  it('is a StorageLost, for reading and for writing', async () => {
    const store = await testStore()
    store.database.close()
    await expect(putGarment(store, testGarment())).rejects.toBeInstanceOf(StorageLost)
    await expect(readGarments(store)).rejects.toBeInstanceOf(StorageLost)
  })
})
