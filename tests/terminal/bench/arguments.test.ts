import { describe, expect, it } from 'vitest'
import { readBenchArguments } from '../../../src/terminal/bench/arguments.ts'

describe('the words after bench', () => {
  it('may be none', () => {
    expect(readBenchArguments([])).toMatchObject({
      ok: true,
      value: { folder: undefined, seconds: 10, planted: 0, garments: 1000, json: false, browser: false },
    })
  })

  it('are read', () => {
    const words = ['cases', '--seconds', '2.5', '--planted', '30', '--json', '--only', 'fu']
    const value = { folder: 'cases', seconds: 2.5, planted: 30, json: true, only: 'fu' }
    expect(readBenchArguments(words)).toMatchObject({ ok: true, value })
  })

  it.each([
    [['--seconds', '0'], '--seconds'],
    [['--planted', '2.5'], '--planted'],
    [['--garments', 'many'], '--garments'],
    [['--plantd', '3'], 'bench'],
  ])('%j are refused by name', (words, field) => {
    const read = readBenchArguments(words)
    expect(read.ok ? [] : read.faults.map((fault) => fault.field)).toEqual([field])
  })
})
