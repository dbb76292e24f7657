import { entriesOf } from './entries.ts'
import type { Side } from './merge.ts'
import type { CommonState, Contents } from './record.ts'

/** The time of each record's last change or removal, by refKey. */
export function stampsOf(contents: Contents): Readonly<Record<string, number>> {
  return Object.fromEntries([...entriesOf(contents)].map(([key, { stamp }]) => [key, stamp]))
}

/**
 * What is known of other devices once a file has been taken up: the file's own device as the file shows it, and of
 * any other the later of what was known here and there.
 */
export function commonAfter(
  known: readonly CommonState[],
  file: Side & { readonly madeAt: number },
): readonly CommonState[] {
  const taken = { device: file.device, at: file.madeAt, stamps: stampsOf(file.contents) }
  const latest = new Map<string, CommonState>()
  for (const state of [...known, ...file.common, taken]) {
    const there = latest.get(state.device)
    if (!there || there.at <= state.at) latest.set(state.device, state)
  }
  return [...latest.values()]
}
