import { signal } from '@preact/signals'
import { expect, it } from 'vitest'
import { inTurn } from '../../../src/ui/state/in-turn.ts'

const soon = () => new Promise((done) => setTimeout(done, 1))

it('writes the first and the newest value, never two at once', async () => {
  const written: number[] = []
  let busy = 0
  const keep = inTurn(async (value: number) => {
    busy += 1
    expect(busy).toBe(1)
    await soon()
    written.push(value)
    busy -= 1
  }, signal<unknown>(null))
  for (const value of [1, 2, 3, 4]) keep(value)
  while (written.at(-1) !== 4) await soon()
  expect(written).toEqual([1, 4])
})

it('says what went wrong until a write succeeds again', async () => {
  const trouble = signal<unknown>(null)
  const full = new Error('full')
  const keep = inTurn(async (value: number) => {
    await soon()
    if (value === 1) throw full
  }, trouble)
  keep(1)
  while (trouble.value === null) await soon()
  expect(trouble.value).toBe(full)
  keep(2)
  while (trouble.value !== null) await soon()
  expect(trouble.value).toBeNull()
})
