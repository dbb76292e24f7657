import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mergeContents } from '../../../src/core/records/merge.ts'
import { type Contents, NO_CONTENTS, RECORD_STORES } from '../../../src/core/records/record.ts'
import { anyContents, oneStash, side } from '../../support/two-devices.ts'

const merged = (a: Contents, b: Contents) => mergeContents(side('a', a), side('b', b)).contents

describe('merging any two stashes', () => {
  it('with itself changes nothing', () => {
    fc.assert(
      fc.property(oneStash, (a) => void expect(merged(a, a)).toEqual(a)),
      { numRuns: 300 },
    )
  })

  it('with an empty one changes nothing', () => {
    fc.assert(
      fc.property(oneStash, (a) => void expect(merged(a, NO_CONTENTS)).toEqual(a)),
      { numRuns: 300 },
    )
  })

  it('gives the same on both devices', () => {
    fc.assert(
      fc.property(oneStash, oneStash, (a, b) => void expect(merged(a, b)).toEqual(merged(b, a))),
      { numRuns: 300 },
    )
  })

  it('and then with either again changes nothing', () => {
    fc.assert(
      fc.property(oneStash, oneStash, (a, b) => {
        const once = merged(a, b)
        expect(merged(once, b)).toEqual(once)
        expect(merged(once, a)).toEqual(once)
        expect(mergeContents(side('a', once), side('b', b)).differences).toEqual([])
      }),
      { numRuns: 300 },
    )
  })

  it('holds when what is given makes no sense together', () => {
    fc.assert(
      fc.property(anyContents, anyContents, (a, b) => {
        const once = merged(a, b)
        expect(merged(b, a)).toEqual(once)
        expect(merged(once, b)).toEqual(once)
      }),
      { numRuns: 300 },
    )
  })

  it('leaves one stash: everything once, every panel cut once, every place and every copy promised once', () => {
    fc.assert(
      fc.property(anyContents, anyContents, (a, b) => {
        expect(wrongWith(merged(a, b))).toEqual([])
      }),
      { numRuns: 300 },
    )
  })

  it('loses nothing that neither side removed and nothing else had to give way to', () => {
    fc.assert(
      fc.property(oneStash, oneStash, (a, b) => {
        const { contents, settlements } = mergeContents(side('a', a), side('b', b))
        for (const store of ['garments', 'projects'] as const) {
          const ids = contents.records[store].map(({ id }) => id)
          const gone = [...a.removed, ...b.removed].filter((removed) => removed.store === store)
          for (const { id } of [...a.records[store], ...b.records[store]])
            expect(ids.includes(id) || gone.some((removed) => removed.id === id)).toBe(true)
        }
        for (const store of ['reservations', 'cuts', 'offcuts'] as const) {
          const left = contents.records[store].length
          const asked = new Set([...a.records[store], ...b.records[store]].map(({ id }) => id)).size
          if (left < asked)
            expect(settlements.length + a.removed.length + b.removed.length).toBeGreaterThan(0)
        }
      }),
      { numRuns: 500 },
    )
  })
})

/** What is wrong with a stash, told by means that share nothing with the merge: every piece here is a square of a grid. */
function wrongWith({ records, removed }: Contents): string[] {
  const wrong: string[] = []
  const once = (what: string, all: readonly string[]) => {
    const doubled = all.filter((each, k) => all.indexOf(each) !== k)
    if (doubled.length > 0) wrong.push(`${what} twice: ${doubled.join()}`)
  }
  const refs = RECORD_STORES.flatMap((store) => records[store].map(({ id }) => `${store}/${id}`))
  once('record', [...refs, ...removed.map(({ store, id }) => `${store}/${id}`)])
  once(
    'panel cut',
    records.cuts.map(({ value }) => `${value.garment}/${value.panel}`),
  )
  once(
    'place',
    records.reservations.flatMap(({ value }) => [
      ...new Set(value.pieces.map((p) => `${value.garment}/${p.panel}/${p.outline[0]}`)),
    ]),
  )
  const reserved = records.reservations.flatMap(({ value }) => [
    ...new Set(value.pieces.map((p) => `${value.project}/${p.piece}/${p.copy}`)),
  ])
  const cut = records.cuts.flatMap(({ value }) =>
    value.pieces.map((p) => `${value.project}/${p.piece}/${p.copy}`),
  )
  once('copy', [...reserved, ...new Set(cut)])
  const has = (ref: string) => refs.includes(ref)
  for (const { id, value } of records.reservations) {
    if (!has(`garments/${value.garment}`) || !has(`projects/${value.project}`)) wrong.push(`${id} hangs`)
    const onCut = value.pieces.some(({ panel }) =>
      records.cuts.some((c) => c.value.garment === value.garment && c.value.panel === panel),
    )
    if (onCut) wrong.push(`${id} lies on a panel that was cut`)
  }
  for (const { id, value } of records.cuts) if (!has(`garments/${value.garment}`)) wrong.push(`${id} hangs`)
  for (const { id, value } of records.offcuts)
    if (!has(`cuts/${value.cut}`) || !has(`garments/${value.garment}`)) wrong.push(`${id} hangs`)
  return wrong
}
