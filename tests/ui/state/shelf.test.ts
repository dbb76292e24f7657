import { signal } from '@preact/signals'
import { describe, expect, it, vi } from 'vitest'
import { putPattern, readPatterns, removePattern } from '../../../src/storage/stores/patterns.ts'
import { Shelf, type ShelfStore } from '../../../src/ui/state/shelf.ts'
import { freshName, testPattern, testStore } from '../../support/storage.ts'

type Pattern = ReturnType<typeof testPattern>

const FUNCTIONS: ShelfStore<Pattern> = {
  name: 'patterns',
  read: readPatterns,
  put: putPattern,
  remove: removePattern,
}

async function openShelf(name: string, functions: Partial<ShelfStore<Pattern>> = {}) {
  const store = await testStore({ name })
  const trouble = signal<unknown>(null)
  const shelf = new Shelf<Pattern>({ ...FUNCTIONS, ...functions })
  await shelf.follow(store, trouble)
  const onDisk = async () => (await readPatterns(store)).records.map(({ value }) => value)
  return { shelf, store, trouble, onDisk }
}

describe('a shelf of records', () => {
  it('shows a change at once and has it on the disk soon after', async () => {
    const { shelf, onDisk } = await openShelf(freshName())
    const bag = testPattern()
    shelf.put(bag)
    expect(shelf.records.value).toEqual([bag])
    await vi.waitFor(async () => expect(await onDisk()).toEqual([bag]))
    shelf.remove(bag.id)
    expect(shelf.records.value).toEqual([])
    await vi.waitFor(async () => expect(await onDisk()).toEqual([]))
  })

  it('writes what was put before the store was open, beside what was stored already', async () => {
    const store = await testStore()
    await putPattern(store, testPattern({ id: 'before' }))
    const shelf = new Shelf<Pattern>(FUNCTIONS)
    shelf.put(testPattern({ id: 'early' }))
    await shelf.follow(store, signal<unknown>(null))
    const ids = shelf.records.value.map(({ id }) => id).sort()
    expect(ids).toEqual(['before', 'early'])
    expect((await readPatterns(store)).records.map(({ id }) => id).sort()).toEqual(ids)
  })

  it('ends with the last of many changes that came faster than the disk', async () => {
    let puts = 0
    const { shelf, onDisk } = await openShelf(freshName(), {
      put: (store, value) => {
        puts += 1
        return putPattern(store, value)
      },
    })
    for (let k = 0; k <= 50; k++) {
      shelf.put(testPattern({ name: `Bag ${k}` }))
      expect(shelf.records.value[0]?.name).toBe(`Bag ${k}`)
    }
    await vi.waitFor(async () => expect((await onDisk())[0]?.name).toBe('Bag 50'))
    expect(shelf.records.value[0]?.name).toBe('Bag 50')
    expect(puts).toBeLessThan(51)
  })

  it('never shows what is older than what was typed, while writing and reading overlap', async () => {
    const { shelf, onDisk } = await openShelf(freshName())
    const seen: string[] = []
    const stop = shelf.records.subscribe(([first]) => void (first && seen.push(first.name)))
    for (let k = 0; k < 20; k++) {
      shelf.put(testPattern({ name: String(k) }))
      await new Promise((resolve) => setTimeout(resolve, k % 3))
    }
    await vi.waitFor(async () => expect((await onDisk())[0]?.name).toBe('19'))
    stop()
    const numbers = seen.map(Number)
    expect(numbers).toEqual([...numbers].sort((a, b) => a - b))
  })

  it('keeps the object it holds when what is stored says the same', async () => {
    const { shelf, store } = await openShelf(freshName())
    const bag = testPattern()
    shelf.put(bag)
    await putPattern(store, testPattern({ id: 'p2' }))
    await vi.waitFor(() => expect(shelf.records.value).toHaveLength(2))
    expect(shelf.records.value).toContain(bag)
  })

  it('shows what another tab stores', async () => {
    const name = freshName()
    const here = await openShelf(name)
    const there = await openShelf(name)
    there.shelf.put(testPattern({ name: 'From there' }))
    await vi.waitFor(() => expect(here.shelf.records.value[0]?.name).toBe('From there'))
  })

  it('says what the device refused, holds on to it, and writes it with the next change', async () => {
    let refuses = true
    const { shelf, trouble, onDisk } = await openShelf(freshName(), {
      put: (store, value) => (refuses ? Promise.reject(new Error('no room')) : putPattern(store, value)),
    })
    shelf.put(testPattern({ name: 'First' }))
    await vi.waitFor(() => expect(trouble.value).toEqual(new Error('no room')))
    expect(shelf.records.value[0]?.name).toBe('First')
    expect(await onDisk()).toEqual([])
    refuses = false
    shelf.put(testPattern({ id: 'p2', name: 'Second' }))
    await vi.waitFor(async () =>
      expect((await onDisk()).map(({ name }) => name).sort()).toEqual(['First', 'Second']),
    )
    expect(trouble.value).toBeNull()
  })

  it('tells records that cannot be read and leaves them stored', async () => {
    const { shelf, store } = await openShelf(freshName())
    await store.database.put('patterns', { id: 'odd', value: {}, keptAt: 1, changedAt: 1 } as never)
    shelf.put(testPattern())
    await vi.waitFor(() => expect(shelf.unreadable.value.map(({ id }) => id)).toEqual(['odd']))
    expect(await store.database.count('patterns')).toBe(2)
  })
})
