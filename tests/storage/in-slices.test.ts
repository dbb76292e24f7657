import { describe, expect, it } from 'vitest'
import { inSlices } from '../../src/storage/in-slices.ts'
import { putGarment, readGarments } from '../../src/storage/stores/garments.ts'
import { testGarment, testStore } from '../support/storage.ts'

/** How many tasks of others came between while this ran. */
async function tasksBetween<T>(work: () => Promise<T>): Promise<readonly [T, number]> {
  let [tasks, isOver] = [0, false]
  const others = () => {
    tasks += 1
    if (!isOver) setImmediate(others)
  }
  setImmediate(others)
  const done = await work()
  isOver = true
  return [done, tasks]
}

describe('work in slices', () => {
  it('gives all in order, and lets others in between', async () => {
    const items = Array.from({ length: 500 }, (_, k) => k)
    const [done, tasks] = await tasksBetween(() => inSlices(items, (k) => 2 * k))
    expect(done).toEqual(items.map((k) => 2 * k))
    expect(tasks).toBeGreaterThan(10)
  })

  it('is what reading a large stash is', async () => {
    let gated = 0
    let most = 0
    const store = await testStore()
    for (let k = 0; k < 200; k++) await putGarment(store, testGarment({ id: `g${k}` }))
    const garments = store.gates.garments
    const counting = {
      ...store,
      gates: {
        ...store.gates,
        garments: (raw: unknown) => {
          gated += 1
          return garments(raw)
        },
      },
    }
    let last = 0
    const looks = () => {
      most = Math.max(most, gated - last)
      last = gated
      if (gated < 200) setImmediate(looks)
    }
    setImmediate(looks)
    const { records } = await readGarments(counting as typeof store)
    expect(records).toHaveLength(200)
    expect(gated).toBe(200)
    expect(most).toBeLessThan(100)
  })
})
