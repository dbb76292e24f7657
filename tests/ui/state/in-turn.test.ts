import { signal } from '@preact/signals'
import { expect, it } from 'vitest'
import { inTurn } from '../../../src/ui/state/in-turn.ts'
import { unwritten, writeAgain } from '../../../src/ui/state/unwritten.ts'

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

it('holds what was refused, whatever else is stored meanwhile, until it is written', async () => {
  const trouble = signal<unknown>(null)
  const [written, full] = [[] as number[], new Error('full')]
  let refuses = true
  const keep = inTurn(async (value: number) => {
    await soon()
    if (refuses) throw full
    written.push(value)
  }, trouble)
  keep(1)
  while (unwritten.value === null) await soon()
  const other = inTurn(async (_value: string) => {}, trouble)
  other('small')
  while (trouble.value !== null) await soon()
  expect(unwritten.value).toBe(full)
  writeAgain()
  await soon()
  await soon()
  expect(unwritten.value).toBe(full)
  refuses = false
  writeAgain()
  while (unwritten.value !== null) await soon()
  expect(written).toEqual([1])
})

it('writes a newer value in place of one that was refused', async () => {
  const written: number[] = []
  const keep = inTurn(async (value: number) => {
    await soon()
    if (value === 1) throw new Error('cannot be copied')
    written.push(value)
  }, signal<unknown>(null))
  keep(1)
  keep(2)
  while (written.length === 0) await soon()
  expect(written).toEqual([2])
  await soon()
  expect(unwritten.value).toBeNull()
})
