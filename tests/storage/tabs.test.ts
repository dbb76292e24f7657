import { describe, expect, it, vi } from 'vitest'
import { StorageLost } from '../../src/storage/errors.ts'
import { onStoreChange } from '../../src/storage/open-store.ts'
import { keepGarment, putGarment, readGarments } from '../../src/storage/stores/garments.ts'
import { UPGRADES } from '../../src/storage/upgrades/all.ts'
import { freshName, testGarment, testStore } from '../support/storage.ts'

describe('two tabs', () => {
  it('hear of each other’s changes once these can be read', async () => {
    const name = freshName()
    const [here, there] = [await testStore({ name }), await testStore({ name })]
    const heard = new Promise<number>((resolve) => {
      onStoreChange(there, async (stores) => {
        expect(stores).toEqual(['garments', 'removed'])
        resolve((await readGarments(there)).records.length)
      })
    })
    await putGarment(here, testGarment())
    expect(await heard).toBe(1)
  })

  it('with different stores hear nothing of each other', async () => {
    const [here, elsewhere] = [await testStore(), await testStore()]
    const listener = vi.fn()
    onStoreChange(elsewhere, listener)
    const own = vi.fn()
    onStoreChange(here, own)
    await keepGarment(here, testGarment())
    expect(own).toHaveBeenCalledWith(['garments', 'drafts', 'removed'])
    expect(listener).not.toHaveBeenCalled()
  })
})

describe('a listener', () => {
  it('hears no more once it has stopped', async () => {
    const store = await testStore()
    const listener = vi.fn()
    onStoreChange(store, listener)()
    await putGarment(store, testGarment())
    expect(listener).not.toHaveBeenCalled()
  })

  it('hears nothing of a write that failed', async () => {
    const store = await testStore()
    const listener = vi.fn()
    onStoreChange(store, listener)
    const uncopyable = testGarment({ note: (() => '') as unknown as string })
    await expect(putGarment(store, uncopyable)).rejects.toThrow()
    expect(listener).not.toHaveBeenCalled()
  })
})

describe('a tab with a newer app', () => {
  it('makes the older tab give way, which says so and then refuses to write', async () => {
    const name = freshName()
    const onLost = vi.fn()
    const old = await testStore({ name, onLost })
    await putGarment(old, testGarment())
    const young = await testStore({ name, upgrades: [...UPGRADES, () => {}] })
    expect(onLost).toHaveBeenCalledOnce()
    await expect(putGarment(old, testGarment())).rejects.toBeInstanceOf(StorageLost)
    expect((await readGarments(young)).records).toHaveLength(1)
  })

  it('is told when an older tab does not give way, and goes on once that is closed', async () => {
    const name = freshName()
    // A connection of before the app learnt to give way: nobody listens for `versionchange`.
    const stubborn = await new Promise<IDBDatabase>((resolve) => {
      const request = indexedDB.open(name, 1)
      request.onsuccess = () => resolve(request.result)
    })
    const onBlocked = vi.fn(() => stubborn.close())
    const young = await testStore({ name, onBlocked, upgrades: [() => {}, ...UPGRADES] })
    expect(onBlocked).toHaveBeenCalledOnce()
    expect(young.database.version).toBe(UPGRADES.length + 1)
  })
})
