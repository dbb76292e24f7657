import type { Garment } from '../../src/core/garments/garment.ts'
import { clothOf } from '../../src/core/stash/cloth-of.ts'
import { overlapsOf } from '../../src/core/stash/overlaps.ts'
import type { Reservation } from '../../src/core/stash/reservation.ts'
import { reservationFaults } from '../../src/core/stash/reservation-faults.ts'
import { reserve } from '../../src/storage/cloth/reserve.ts'
import type { Store } from '../../src/storage/open-store.ts'
import { RECORD_STORES } from '../../src/storage/schema.ts'
import { readClothRecords } from '../../src/storage/stores/cloth-records.ts'
import { putGarment } from '../../src/storage/stores/garments.ts'
import { putProject } from '../../src/storage/stores/projects.ts'
import { rectangle } from './lay-problems.ts'
import { aCloth, aReservation, laidAt } from './stash.ts'
import { testStore } from './storage.ts'
import { testProject } from './two-devices.ts'

export const BAG = aReservation(
  'r-bag',
  [laidAt('body', rectangle(200, 300)), laidAt('body', rectangle(200, 300, 200, 0), { copy: 2 })],
  'bag',
)
export const HAT = aReservation('r-hat', [laidAt('brim', rectangle(150, 150, 420, 0))], 'hat')

/** A store with one cloth of 600 × 400 and the projects bag and hat, and these reservations. */
export async function storeWithCloth(
  reservations: readonly Reservation[] = [],
  options: Parameters<typeof testStore>[0] = {},
): Promise<Store<unknown>> {
  const store = await testStore(options)
  await putGarment(store, aCloth())
  for (const id of ['bag', 'hat']) await putProject(store, testProject({ id, name: id }))
  for (const reservation of reservations) await reserve(store, { reservation })
  return store
}

let ids = 0

/** An id that no other call gives. */
export function freshId(): string {
  ids += 1
  return `new-${ids}`
}

/** All that is stored, to be compared; pictures by their ids. */
export async function everythingIn({ database }: Store<unknown>): Promise<Record<string, unknown>> {
  const all: Record<string, unknown> = {}
  for (const name of [...RECORD_STORES, 'removed', 'drafts'] as const) all[name] = await database.getAll(name)
  all.pictures = await database.getAllKeys('pictures')
  return all
}

/** What is wrong with the stash as a whole: reserved places that overlap, or that no cloth has. */
export async function troubleIn(store: Store<unknown>): Promise<readonly string[]> {
  const { records, unreadable } = await readClothRecords(store)
  const garments: Garment[] = (await store.database.getAll('garments')).map(({ value }) => value)
  const faults = records.reservations.flatMap((reservation) => {
    const garment = garments.find(({ id }) => id === reservation.garment)
    if (!garment) return [`${reservation.id} is on no garment`]
    const found = reservationFaults(reservation, clothOf(garment, records))
    return found.map(({ piece, kind }) => `${reservation.id}: ${piece} ${kind}`)
  })
  const cut = new Set(records.cuts.map(({ id }) => id))
  return [
    ...faults,
    ...overlapsOf(records.reservations).map(({ first, second }) => `${first.piece} lies on ${second.piece}`),
    ...unreadable.map(({ store: name, id }) => `${name}/${id} is unreadable`),
    ...records.offcuts.filter((offcut) => !cut.has(offcut.cut)).map(({ id }) => `offcut ${id} is of no cut`),
    ...records.cuts.flatMap(({ id, offcuts }) =>
      offcuts
        .filter((offcut) => !records.offcuts.some((one) => one.id === offcut))
        .map((offcut) => `cut ${id} lacks offcut ${offcut}`),
    ),
  ]
}
