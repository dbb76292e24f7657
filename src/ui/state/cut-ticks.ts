import { effect, signal } from '@preact/signals'
import type { LaidPiece } from '../../core/stash/reservation.ts'
import { readCutTicks, writeCutTicks } from '../../storage/stores/cut-ticks.ts'
import { inTurn } from './in-turn.ts'
import { storeTrouble, theStore } from './keeper.ts'

/** Copies ticked off at the table: scissors take an hour, and the phone may sleep meanwhile. null: still being read. */
const ticks = signal<readonly string[] | null>(null)

let opening: Promise<void> | null = null

/** Brings the ticks back, once, and stores every change from then on. */
export function openCutTicks(): Promise<void> {
  opening ??= bringBack()
  return opening
}

async function bringBack(): Promise<void> {
  try {
    const store = await theStore()
    const stored = await readCutTicks(store)
    ticks.value = stored
    const keep = inTurn((value: readonly string[]) => writeCutTicks(store, value), storeTrouble)
    effect(() => {
      if (ticks.value && ticks.value !== stored) keep(ticks.value)
    })
  } catch (error) {
    storeTrouble.value = error
    ticks.value ??= []
  }
}

type Copy = Pick<LaidPiece, 'piece' | 'copy'>

export function isTicked(reservation: string, copy: Copy): boolean {
  return ticks.value?.includes(keyOf(reservation, copy)) ?? false
}

export function tick(reservation: string, copy: Copy, on: boolean): void {
  const key = keyOf(reservation, copy)
  const others = (ticks.value ?? []).filter((other) => other !== key)
  ticks.value = on ? [...others, key] : others
}

function keyOf(reservation: string, { piece, copy }: Copy): string {
  return `${reservation} ${piece}#${copy}`
}
