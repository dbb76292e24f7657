import { describe, expect, it } from 'vitest'
import { ClothTaken, NoLongerThere } from '../../src/storage/cloth/refusals.ts'
import { reserveAll } from '../../src/storage/cloth/reserve.ts'
import type { Store } from '../../src/storage/open-store.ts'
import { readClothRecords } from '../../src/storage/stores/cloth-records.ts'
import { putGarment } from '../../src/storage/stores/garments.ts'
import { rectangle } from '../support/lay-problems.ts'
import { aCloth, aReservation, laidAt } from '../support/stash.ts'
import { BAG, everythingIn, HAT, storeWithCloth, troubleIn } from '../support/stash-store.ts'

const reserved = async (store: Store<unknown>) => (await readClothRecords(store)).records.reservations
const onSecond = (id: string, ...rest: Parameters<typeof laidAt>) => ({
  ...aReservation(id, [laidAt(...rest)], 'bag'),
  garment: 'second',
})

async function twoCloths(reservations: Parameters<typeof storeWithCloth>[0] = []) {
  const store = await storeWithCloth(reservations)
  await putGarment(store, aCloth({ id: 'second' }))
  return store
}

describe('lays on several cloths', () => {
  it('are all reserved', async () => {
    const store = await twoCloths()
    const lining = onSecond('r-lining', 'lining', rectangle(200, 300))
    await reserveAll(store, [{ reservation: BAG }, { reservation: lining }])
    expect((await reserved(store)).map(({ id }) => id).sort()).toEqual(['r-bag', 'r-lining'])
    expect(await troubleIn(store)).toEqual([])
  })

  it('are none of them reserved when the place of one is taken, whichever comes first', async () => {
    for (const backwards of [false, true]) {
      const store = await twoCloths([HAT])
      const before = await everythingIn(store)
      const hatPlace = HAT.pieces[0]?.outline ?? []
      const taken = aReservation('r-taken', [laidAt('body', hatPlace)], 'bag')
      const both = [
        { reservation: onSecond('r-lining', 'lining', rectangle(200, 300)) },
        { reservation: taken },
      ]
      const asked = reserveAll(store, backwards ? both.reverse() : both)
      await expect(asked).rejects.toBeInstanceOf(ClothTaken)
      expect(await everythingIn(store)).toEqual(before)
    }
  })

  it('are none of them reserved when one of the cloths is there no more', async () => {
    const store = await storeWithCloth()
    const before = await everythingIn(store)
    const lining = onSecond('r-lining', 'lining', rectangle(200, 300))
    await expect(reserveAll(store, [{ reservation: BAG }, { reservation: lining }])).rejects.toBeInstanceOf(
      NoLongerThere,
    )
    expect(await everythingIn(store)).toEqual(before)
  })

  it('are held against one another', async () => {
    const store = await twoCloths()
    const before = await everythingIn(store)
    const over = aReservation('r-over', [laidAt('tie', rectangle(100, 100, 50, 50))], 'bag')
    await expect(reserveAll(store, [{ reservation: BAG }, { reservation: over }])).rejects.toBeInstanceOf(
      ClothTaken,
    )
    expect(await everythingIn(store)).toEqual(before)
  })

  it('may change places: what one leaves the other takes', async () => {
    const [left, right] = [rectangle(200, 300), rectangle(200, 300, 250, 0)]
    const mine = aReservation('r1', [laidAt('body', left)], 'bag')
    const other = aReservation('r2', [laidAt('lining', right)], 'bag')
    const store = await twoCloths([mine, other])
    await reserveAll(store, [
      { reservation: { ...mine, pieces: [laidAt('body', right)] } },
      { reservation: { ...other, pieces: [laidAt('lining', left)] } },
    ])
    expect(await troubleIn(store)).toEqual([])
    expect((await reserved(store)).map(({ pieces }) => pieces[0]?.outline)).toEqual([right, left])
  })
})
