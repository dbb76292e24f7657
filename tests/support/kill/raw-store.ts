import type { Page } from 'playwright-core'
import type { Point, Polygon } from '../../../src/core/geometry/index.ts'
import { overlapArea, toJsts, uncoveredArea } from '../planar.ts'

/** What lies on the disk, by store, read without any code of the app. Pictures are given as their text. */
export type Raw = Readonly<Record<string, readonly RawRecord[]>>

interface RawRecord {
  readonly id: string
  readonly store?: string
  readonly picture?: string
  readonly value: RawValue
}

/** As far as the checks below look. */
interface RawValue {
  readonly garment: string
  readonly project: string
  readonly panel: string
  readonly cut: string
  readonly outline: Polygon
  readonly photos: readonly string[]
  readonly offcuts: readonly string[]
  readonly pieces: readonly RawPiece[]
}

interface RawPiece {
  readonly piece: string
  readonly copy: number
  readonly panel: string
  readonly outline: Polygon
}

/** What each store of these names holds. */
export function readRaw(page: Page, stores: readonly string[]): Promise<readonly Raw[]> {
  return page.evaluate(async (all) => {
    const answer = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
    const readable = async (record: { readonly picture?: unknown }) =>
      record.picture instanceof Blob ? { ...record, picture: await record.picture.text() } : record
    const read = async (store: string) => {
      const database = await answer(indexedDB.open(store))
      const names = [...database.objectStoreNames]
      const transaction = database.transaction(names)
      const records = await Promise.all(names.map((name) => answer(transaction.objectStore(name).getAll())))
      database.close()
      const texts = await Promise.all(records.map((some) => Promise.all(some.map(readable))))
      return Object.fromEntries(names.map((name, k) => [name, texts[k]]))
    }
    return Promise.all(all.map(read))
  }, stores) as unknown as Promise<readonly Raw[]>
}

/** Rounding of the polygon library along a whole edge, mm². */
const LEAST = 0.5

/** What is wrong with the stash as a whole: half records, and places promised twice. */
export function troubleInRaw(raw: Raw): readonly string[] {
  return [...halves(raw), ...cutTrouble(raw), ...overlaps(raw)]
}

const ids = (records: readonly RawRecord[] = []) => new Set(records.map(({ id }) => id))

function halves(raw: Raw): string[] {
  const trouble: string[] = []
  const need = (there: ReadonlySet<string>, id: string, what: string) => {
    if (!there.has(id)) trouble.push(`${what} is without ${id}`)
  }
  const [garments, projects, photos] = [ids(raw.garments), ids(raw.projects), ids(raw.photos)]
  for (const { id, value } of raw.garments ?? [])
    for (const photo of value.photos) need(photos, photo, `garment ${id}`)
  for (const id of photos) need(ids(raw.pictures), id, 'a photo')
  for (const { id } of raw.pictures ?? []) need(photos, id, 'a picture')
  for (const { id, value } of raw.reservations ?? []) {
    need(garments, value.garment, `reservation ${id}`)
    need(projects, value.project, `reservation ${id}`)
  }
  for (const name of ['cuts', 'offcuts'])
    for (const { id, value } of raw[name] ?? []) need(garments, value.garment, `${name} ${id}`)
  for (const { store, id } of raw.removed ?? [])
    if (ids(raw[store as string]).has(id)) trouble.push(`${store} ${id} is there and removed`)
  return trouble
}

/** A cut stands or falls with its offcuts and with the change of its reservation. */
function cutTrouble({ cuts = [], offcuts = [], reservations = [] }: Raw): string[] {
  const trouble: string[] = []
  for (const { id, value } of cuts) {
    const left = offcuts.filter((offcut) => offcut.value.cut === id)
    if (
      left
        .map((one) => one.id)
        .sort()
        .join() !== [...value.offcuts].sort().join()
    )
      trouble.push(`cut ${id} has other offcuts than it names`)
    const parts = [...value.pieces, ...left.map((offcut) => offcut.value)].map(({ outline }) =>
      toJsts(outline),
    )
    parts.forEach((part, k) => {
      if (uncoveredArea(part, toJsts(value.outline)) > LEAST) trouble.push(`cut ${id}: a part sticks out`)
      if (parts.slice(k + 1).some((other) => overlapArea(part, other) > LEAST))
        trouble.push(`cut ${id}: two parts overlap`)
    })
    if (
      cuts.some(
        (other) =>
          other.id !== id && other.value.garment === value.garment && other.value.panel === value.panel,
      )
    )
      trouble.push(`${value.panel} is cut twice`)
    for (const { piece, copy } of value.pieces)
      for (const { value: other } of reservations)
        if (
          other.project === value.project &&
          other.pieces.some((one) => one.piece === piece && one.copy === copy)
        )
          trouble.push(`${piece}#${copy} is cut and reserved`)
  }
  for (const { id, value } of offcuts)
    if (!ids(cuts).has(value.cut)) trouble.push(`offcut ${id} is of no cut`)
  return trouble
}

const PANEL: Polygon = [
  [0, 0],
  [600, 0],
  [600, 400],
  [0, 400],
] satisfies Point[]

/** Every reserved piece lies on cloth that is there, and on no other piece. Whole cloths are 600 × 400. */
function overlaps({ cuts = [], offcuts = [], reservations = [] }: Raw): string[] {
  const trouble: string[] = []
  const laid = reservations.flatMap(({ value }) =>
    value.pieces.map((piece) => ({ ...piece, garment: value.garment, shape: toJsts(piece.outline) })),
  )
  laid.forEach(({ piece, garment, panel, shape }, k) => {
    const isCut = cuts.some(({ value }) => value.garment === garment && value.panel === panel)
    const offcut = offcuts.find(({ id, value }) => id === panel && value.garment === garment)
    const cloth = offcut ? offcut.value.outline : panel === 'outline' ? PANEL : null
    if (isCut || !cloth) trouble.push(`${piece} is reserved on ${panel}, which is there no more`)
    else if (uncoveredArea(shape, toJsts(cloth)) > LEAST) trouble.push(`${piece} sticks out of ${panel}`)
    for (const other of laid.slice(k + 1))
      if (other.garment === garment && overlapArea(shape, other.shape) > LEAST)
        trouble.push(`${piece} lies on ${other.piece}`)
  })
  return trouble
}
