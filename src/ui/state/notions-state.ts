import { signal } from '@preact/signals'
import type { Notion, NotionCut, NotionKind } from '../../core/notions/index.ts'
import { putNotion, readNotions, removeNotion } from '../../storage/stores/notions.ts'
import { giveBackNotions, NotionsChanged, takeNotions } from '../../storage/stores/taken-notions.ts'
import { storeTrouble, theStore } from './keeper.ts'
import { newId } from './new-id.ts'
import { Shelf } from './shelf.ts'
import { offerUndo } from './undo.ts'
import { isLeftIn } from './unfinished.ts'

const shelf = new Shelf<Notion>({
  name: 'notions',
  read: readNotions,
  put: putNotion,
  remove: removeNotion,
})

/** Every notion owned, the last kept first. */
export const notions = shelf.records
export const unreadableNotions = shelf.unreadable

/** False until `notions` holds what is stored. */
export const notionsOpen = signal(false)

/** Reads the notions, once, and follows their changes. */
export async function openNotions(): Promise<void> {
  try {
    await shelf.follow(await theStore(), storeTrouble)
  } catch (error) {
    storeTrouble.value = error
  }
  notionsOpen.value = true
}

/** Resolves when every change of a notion made so far is stored, or refused. */
export function notionsWritten(): Promise<void> {
  return shelf.written()
}

export function notionById(id: string): Notion | null {
  return notions.value.find((notion) => notion.id === id) ?? null
}

/** Begins a notion of a kind, and gives its id. */
export function newNotion(kind: NotionKind): string {
  const id = newId()
  shelf.put({
    id,
    kind,
    name: '',
    width: null,
    colour: '',
    lengths: [],
    count: 0,
    price: null,
    place: '',
    note: '',
  })
  return id
}

/** Changes a notion, at every change; nothing happens if it is gone. */
export function changeNotion(id: string, part: Partial<Notion>): void {
  const now = notionById(id)
  if (now) shelf.put({ ...now, ...part })
}

export function dropNotion(notion: Notion, said: string): void {
  shelf.remove(notion.id)
  offerUndo(said, () => shelf.put(notion))
}

/** Takes a notion away that was begun and left with nothing in it. */
export function dropIfBlank(id: string): void {
  const notion = notionById(id)
  if (!notion || isLeftIn(id)) return
  const { name, colour, note, place, width, lengths, count, price } = notion
  const written = [name, colour, note, place].some((text) => text.trim() !== '')
  if (!written && width === null && price === null && lengths.length === 0 && count === 0) shelf.remove(id)
}

/** Takes one length away, to be put back where it was. */
export function dropLength(notion: Notion, at: number, said: string): void {
  const { id, lengths } = notion
  changeNotion(id, { lengths: lengths.filter((_, k) => k !== at) })
  offerUndo(said, () => {
    const now = notionById(id)?.lengths ?? []
    changeNotion(id, { lengths: now.toSpliced(at, 0, ...lengths.slice(at, at + 1)) })
  })
}

/**
 * Cuts from the notions for a project, all or none; can be undone. False: they have changed since the plan was made, and
 * nothing was cut.
 */
export async function cutForProject(
  project: string,
  cuts: readonly NotionCut[],
  said: string,
): Promise<boolean> {
  try {
    const store = await theStore()
    await takeNotions(store, project, cuts)
    const giveBack = () =>
      giveBackNotions(store, project, cuts).catch((error) => (storeTrouble.value = error))
    offerUndo(said, () => void giveBack(), 'tick')
    return true
  } catch (error) {
    if (error instanceof NotionsChanged) return false
    storeTrouble.value = error
    return true
  }
}
