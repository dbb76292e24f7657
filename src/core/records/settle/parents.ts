import type { Cut, Offcut } from '../../stash/cut.ts'
import type { RecordRef, RecordStore } from '../record.ts'
import type { Settling } from './state.ts'

/** What a record cannot be without. */
interface Need {
  readonly child: RecordRef
  readonly parent: RecordRef
  /** False: it can do without a parent that was removed by whoever knew of it. Cloth stays cut when its project is gone. */
  readonly must: boolean
}

/**
 * A record that one side removed comes back if the other side has something new that needs it: a garment with a new
 * reservation, a cut whose offcut was cut again. That keeps the most; she can remove it again.
 */
export function keepParents(settling: Settling): void {
  let again = true
  while (again) {
    again = false
    const needs = [...needsOf(settling), ...cutAndOffcuts(settling), ...wentWithGarment(settling)]
    for (const { child, parent } of needs) {
      if (settling.has(parent) || !settling.revive(parent, child)) continue
      settling.settlements.push({ store: parent.store, id: parent.id, what: 'kept-for', by: child })
      again = true
    }
  }
}

/** What still lacks something it cannot be without goes. */
export function removeOrphans(settling: Settling): void {
  let again = true
  while (again) {
    again = false
    for (const { child, parent, must } of needsOf(settling)) {
      if (!must || settling.has(parent) || !settling.has(child)) continue
      settling.remove(child)
      settling.settlements.push({ ...child, what: 'orphan-gone' })
      again = true
    }
  }
}

function needsOf(settling: Settling): readonly Need[] {
  const needs: Need[] = []
  const need = (child: RecordRef, store: RecordStore, id: string, must = true) =>
    needs.push({ child, parent: { store, id }, must })
  for (const { id, value } of settling.kept('reservations')) {
    need({ store: 'reservations', id }, 'garments', value.garment)
    need({ store: 'reservations', id }, 'projects', value.project)
  }
  for (const { id, value } of settling.kept('cuts')) {
    need({ store: 'cuts', id }, 'garments', value.garment)
    need({ store: 'cuts', id }, 'projects', value.project, false)
  }
  for (const { id, value } of settling.kept('offcuts')) {
    need({ store: 'offcuts', id }, 'garments', value.garment)
    need({ store: 'offcuts', id }, 'cuts', value.cut)
  }
  return needs
}

/**
 * A garment that stays though one side removed it has again what went with it in that removal: its photos, and its cuts
 * with their offcuts, for cloth that was cut is cut. Reservations do not come back: their places and pieces were free
 * to be given away.
 */
function wentWithGarment(settling: Settling): readonly Need[] {
  return [...settling.graves.values()].flatMap(({ last }) => {
    if (last.state !== 'kept') return []
    const garments =
      last.store === 'cuts' || last.store === 'offcuts'
        ? [(last.kept.value as Cut | Offcut).garment]
        : last.store === 'photos'
          ? settling.kept('garments').flatMap(({ id, value }) => (value.photos.includes(last.id) ? [id] : []))
          : []
    return garments.flatMap((id): Need[] => {
      const child: RecordRef = { store: 'garments', id }
      return settling.has(child) && settling.wentWith(last, child)
        ? [{ child, parent: last, must: false }]
        : []
    })
  })
}

/** A cut comes back with all its offcuts, and with the offcut that it cut. */
function cutAndOffcuts(settling: Settling): readonly Need[] {
  return settling.kept('cuts').flatMap(({ id, value }) =>
    [value.panel, ...value.offcuts].map((offcut) => ({
      child: { store: 'cuts', id } as const,
      parent: { store: 'offcuts', id: offcut } as const,
      must: false,
    })),
  )
}
