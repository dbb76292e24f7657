import { effect, type Signal, signal } from '@preact/signals'
import type { Garment } from '../../core/garments/garment.ts'
import type { ClearSides, ClothFigures } from '../../core/stash/cloth-figures.ts'
import { takenOf } from '../../core/stash/taken.ts'
import { Solvers } from '../../workers/bridge.ts'
import { clothRecords } from './cloth-state.ts'
import { restWhenHidden } from './page-shown.ts'
import { garmentKey } from './stash-yield-key.ts'
import { recordsOf } from './taken-now.ts'

/** What is known of one garment's cloth, and of which state of it. */
interface Known {
  readonly key: string
  readonly figures: ClothFigures
  /** By the sides of a rectangle: whether it is free somewhere. */
  readonly clears: ReadonlyMap<string, boolean>
}

/** By garment, each a signal of its own: what changes of one garment is of no concern to the others. */
const known = new Map<string, Signal<Known | null>>()

/** Counts the batches that have come, for whoever follows many garments. */
export const figuresCome = signal(0)

/** True when the work broke off; it goes on with `tryFiguresAgain`. */
export const figuresFailed = signal(false)

/** A fraction of a second of work on a phone: what is asked for meanwhile waits no longer. */
const BATCH = 24

/** A worker of its own: a search must neither be waited for nor interrupted. */
const workers = new Solvers({ most: 1 })
restWhenHidden(workers)

let isBusy = false

/** The figures of the garment's cloth as it is now; null while they are not known. Reads signals, so it follows them. */
export function figuresOf(garment: Garment): ClothFigures | null {
  const now = signalOf(garment).value
  return now && now.key === keyNow(garment) ? now.figures : null
}

/** As `figuresOf`, but follows no garment: only `figuresCome`, which must be read by whoever calls. */
export function figuresNow(garment: Garment): ClothFigures | null {
  return knownNow(garment)?.figures ?? null
}

/** True if such a rectangle is free; null while it is not known. Follows as `figuresNow` does. */
export function hasClearNow(garment: Garment, sides: ClearSides): boolean | null {
  return knownNow(garment)?.clears.get(sidesKey(sides)) ?? null
}

/** Garments whose figures are wanted, in two parts. */
export interface FiguresWanted {
  /** A few, before all others. */
  readonly first: readonly Garment[]
  /** Another array when any of them is another. */
  readonly others: readonly Garment[]
  readonly clear: ClearSides | null
}

/**
 * Has a worker work out what is not known of these garments, batch by batch, until it is called off. What is wanted may
 * change meanwhile.
 *
 * @param wanted Reads signals.
 */
export function followFigures(wanted: () => FiguresWanted): () => void {
  let done: FiguresWanted | null = null
  let doneOf: unknown = null
  return effect(() => {
    void figuresCome.value
    if (isBusy || figuresFailed.value) return
    const now = wanted()
    const records = clothRecords.value
    const isDone = done?.others === now.others && done.clear === now.clear && doneOf === records
    const open = openOf(isDone ? now.first : [...now.first, ...now.others], now.clear)
    if (open.length > 0) void workOut(open, now.clear)
    else [done, doneOf] = [now, records]
  })
}

/** The same for a garment that is shown by itself. */
export function followFiguresOf(garment: Garment): () => void {
  const wanted: FiguresWanted = { first: [garment], others: [], clear: null }
  return followFigures(() => wanted)
}

/** The first of those that are not known, as many as make a batch. */
function openOf(garments: readonly Garment[], clear: ClearSides | null): readonly Garment[] {
  const open = new Set<Garment>()
  for (const garment of garments) {
    if (open.size === BATCH) break
    if (isOpen(garment, clear)) open.add(garment)
  }
  return [...open]
}

export function tryFiguresAgain(): void {
  figuresFailed.value = false
}

async function workOut(garments: readonly Garment[], clear: ClearSides | null): Promise<void> {
  isBusy = true
  const keys = garments.map(keyNow)
  const from = garments.map((garment) => ({ garment, taken: takenOf(garment.id, recordsOf(garment)) }))
  try {
    const options = { seed: 0, seconds: Number.POSITIVE_INFINITY }
    const answers = await workers.ask(new AbortController().signal, 'cloths', { from, clear }, options)
    garments.forEach((garment, k) => {
      keep(garment, keys[k] as string, answers[k] as ClothFigures, clear)
    })
  } catch {
    figuresFailed.value = true
  }
  isBusy = false
  figuresCome.value += 1
}

function keep(garment: Garment, key: string, figures: ClothFigures, clear: ClearSides | null): void {
  const before = signalOf(garment).peek()
  const clears = new Map(before?.key === key ? before.clears : [])
  if (clear && figures.hasClear !== null) clears.set(sidesKey(clear), figures.hasClear)
  signalOf(garment).value = { key, figures, clears }
}

function isOpen(garment: Garment, clear: ClearSides | null): boolean {
  const now = knownNow(garment)
  return now === null || (clear !== null && !now.clears.has(sidesKey(clear)))
}

function knownNow(garment: Garment): Known | null {
  const now = known.get(garment.id)?.peek() ?? null
  return now && now.key === keyNow(garment) ? now : null
}

function keyNow(garment: Garment): string {
  return garmentKey(garment, recordsOf(garment))
}

function sidesKey({ width, height }: ClearSides): string {
  return `${width} ${height}`
}

function signalOf({ id }: Garment): Signal<Known | null> {
  const now = known.get(id) ?? signal<Known | null>(null)
  known.set(id, now)
  return now
}
