import { effect, signal } from '@preact/signals'
import type { MeasuredKind } from '../../core/garments/index.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import type { BriefQuestion, KindBrief } from '../../core/planning/shopping-brief/brief.ts'
import { readLookFor, writeLookFor } from '../../storage/stores/look-for.ts'
import { isAbort, PRIORITY, solvers } from './answers.ts'
import { inTurn } from './in-turn.ts'
import { storeTrouble, theStore } from './keeper.ts'
import {
  type Choice,
  EMPTY_LIST,
  type Figures,
  figuresOf,
  type LookedFor,
  type LookForList,
  missingKinds,
  withFigures,
  withThing,
} from './look-for-list.ts'
import { newId } from './new-id.ts'
import { patternById } from './patterns-state.ts'
import { settings } from './settings-state.ts'
import { offerUndo } from './undo.ts'

/** What one kind of garment may take, once a worker has begun on it. */
const SECONDS = 5

/** What she wants to find, as it was worked out last; null until it is back from the store. */
export const lookFor = signal<LookForList | null>(null)

/** What is being worked out, with the figures so far, by thing and kind. */
export const underWay = signal<ReadonlyMap<string, Figures | null>>(new Map())

export const lookForFailed = signal(false)

let opening: Promise<void> | null = null

/** Brings the list back and stores every change of it from then on. Without a store it lasts as long as the page. */
export function openLookFor(): Promise<void> {
  opening ??= bringBack()
  return opening
}

async function bringBack(): Promise<void> {
  try {
    const store = await theStore()
    // Loads the validator only with the screen that needs it.
    const { lookForGate } = await import('./look-for-gate.ts')
    const read = await readLookFor(store, lookForGate)
    const stored = read.ok && read.value ? read.value : EMPTY_LIST
    lookFor.value = stored
    const keep = inTurn((value: LookForList) => writeLookFor(store, value), storeTrouble)
    effect(() => {
      if (lookFor.value && lookFor.value !== stored) keep(lookFor.value)
    })
  } catch (error) {
    storeTrouble.value = error
    lookFor.value ??= EMPTY_LIST
  }
}

function change(next: (list: LookForList) => LookForList): void {
  lookFor.value = next(lookFor.peek() ?? EMPTY_LIST)
}

/** Puts a thing on the list, where it stays until she takes it off. */
export async function addThing(choice: Choice, title: string, detail: string): Promise<void> {
  await openLookFor()
  change((list) => withThing(list, { ...choice, id: newId(), title, detail, given: '', figures: [] }))
}

/** `said`: what was done, with the way back. */
export function removeThing(thing: LookedFor, said: string): void {
  const before = lookFor.peek()?.things ?? []
  change((list) => ({ ...list, things: list.things.filter(({ id }) => id !== thing.id) }))
  offerUndo(said, () => {
    const at = before.indexOf(thing)
    change((list) => ({ ...list, things: [...list.things.slice(0, at), thing, ...list.things.slice(at)] }))
  })
}

export function lookAmong(kinds: readonly MeasuredKind[]): void {
  change((list) => ({ ...list, kinds }))
}

/** What the figures of a thing hang on now; null while its pattern is not there. */
export function givenNow({ pattern }: LookedFor): string | null {
  const known = patternById(pattern)
  const { units, tapeDoubt, stretchDoubt, clearance } = settings.value
  return known && [units, tapeDoubt, stretchDoubt, clearance, fingerprint(known)].join(' ')
}

let abort = new AbortController()

/** Works out what is missing or out of date, a kind at a time, each shown as it comes. Ends what it was doing before. */
export async function workOut(): Promise<void> {
  stopWork()
  abort = new AbortController()
  const { signal: stop } = abort
  lookForFailed.value = false
  const { things, kinds } = lookFor.peek() ?? EMPTY_LIST
  const asks = things.flatMap((thing) => {
    const given = givenNow(thing)
    return given === null
      ? []
      : missingKinds(thing, kinds, given).map((kind) => briefOf(thing, kind, given, stop))
  })
  await Promise.all(asks)
}

export function stopWork(): void {
  abort.abort()
  underWay.value = new Map()
}

async function briefOf(
  thing: LookedFor,
  kind: MeasuredKind,
  given: string,
  stop: AbortSignal,
): Promise<void> {
  const pattern = patternById(thing.pattern)
  if (!pattern) return
  const show = (figures: Figures | null) => {
    if (!stop.aborted) underWay.value = new Map(underWay.peek()).set(workKey(thing, kind), figures)
  }
  show(null)
  try {
    const answer = await solvers.ask(stop, 'brief', questionOf(thing, kind, pattern), {
      seed: 1,
      seconds: SECONDS,
      priority: PRIORITY.table,
      onProgress: (brief: KindBrief) => show(figuresOf(brief)),
    })
    if (!answer.ok) lookForFailed.value = true
    else if (!stop.aborted) change((list) => withFigures(list, thing.id, given, figuresOf(answer.value)))
  } catch (reason) {
    if (!isAbort(reason)) lookForFailed.value = true
  }
  if (stop.aborted) return
  const rest = new Map(underWay.peek())
  rest.delete(workKey(thing, kind))
  underWay.value = rest
}

function questionOf(thing: LookedFor, kind: MeasuredKind, pattern: Pattern): BriefQuestion {
  const { version, size, role } = thing
  const { units, tapeDoubt, stretchDoubt, clearance } = settings.peek()
  return {
    pattern,
    version,
    size,
    kind,
    roles: role === null ? null : [role],
    clearance,
    doubt: tapeDoubt,
    stretchDoubt,
    units,
  }
}

export function workKey({ id }: Pick<LookedFor, 'id'>, kind: MeasuredKind): string {
  return `${id} ${kind}`
}

const fingerprints = new WeakMap<Pattern, string>()

/** Tells an edited pattern from the one before (FNV-1a, 32 bits, Fowler, Noll and Vo, in the public domain). */
function fingerprint(pattern: Pattern): string {
  const known = fingerprints.get(pattern)
  if (known !== undefined) return known
  let hash = 0x811c9dc5
  for (const character of JSON.stringify(pattern))
    hash = Math.imul(hash ^ character.charCodeAt(0), 0x01000193)
  const text = (hash >>> 0).toString(16)
  fingerprints.set(pattern, text)
  return text
}
