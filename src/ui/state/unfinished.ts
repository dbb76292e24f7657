import { signal } from '@preact/signals'
import type { Unfinished } from '../../storage/stores/unfinished.ts'

/** Far more than anyone leaves half typed; the oldest go first. */
const MOST = 200

/** Text that stands in fields and is no part of a record yet. Stored at every change. */
export const unfinished = signal<Unfinished>({})

/** What was left in the field; empty: nothing. */
export function leftIn(key: string): string {
  return unfinished.peek()[key] ?? ''
}

/** Remembers what stands in a field; empty: nothing any more. */
export function leaveIn(key: string, text: string): void {
  if (leftIn(key) === text) return
  const others = Object.entries(unfinished.peek()).filter(([other]) => other !== key)
  unfinished.value = Object.fromEntries(text === '' ? others : [...others, [key, text] as const].slice(-MOST))
}

/** Forgets what was left in the fields of a thing: it is part of something now. */
export function forgetLeftIn(thing: string): void {
  const others = Object.entries(unfinished.peek()).filter(([key]) => !key.startsWith(`${thing}/`))
  unfinished.value = Object.fromEntries(others)
}

/** True if any field of the thing, by the start of their keys, holds something unfinished. */
export function isLeftIn(thing: string): boolean {
  return Object.keys(unfinished.peek()).some((key) => key.startsWith(`${thing}/`))
}
