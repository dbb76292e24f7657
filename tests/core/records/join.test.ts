import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Garment } from '../../../src/core/garments/garment.ts'
import { entriesOf, joinEntries } from '../../../src/core/records/entries.ts'
import { joinKept } from '../../../src/core/records/join.ts'
import { mergeContents } from '../../../src/core/records/merge.ts'
import type { Kept } from '../../../src/core/records/record.ts'
import { stampsOf } from '../../../src/core/records/stamps.ts'
import { changedRecord, movedRecord } from '../../../src/core/records/units.ts'
import { contents, kept, testGarment, testProject } from '../../support/records.ts'
import { side } from '../../support/two-devices.ts'

type Change = (garment: Garment) => Garment

const flaw = (id: string, radius: number) => ({
  id,
  panel: 'front',
  kind: 'stain' as const,
  shape: { form: 'round' as const, centre: [0, 0] as const, radius },
})

const change: fc.Arbitrary<Change> = fc.oneof(
  fc.constantFrom('Red', 'Blue', '').map((name) => (now: Garment) => ({ ...now, name })),
  fc.constantFrom('shelf', 'box').map((place) => (now: Garment) => ({ ...now, place })),
  fc
    .constantFrom('red', 'blue')
    .map((colour) => (now: Garment) => ({ ...now, cloth: { ...now.cloth, colour } })),
  fc
    .tuple(fc.constantFrom('chest', 'hem-width'), fc.constantFrom(500, 510))
    .map(([id, mm]) => (now: Garment) => ({
      ...now,
      measures: { ...now.measures, [id]: mm },
    })),
  fc.constant((now: Garment) => ({ ...now, measures: {} })),
  fc.tuple(fc.constantFrom('a', 'b'), fc.constantFrom(3, 5)).map(([id, radius]) => (now: Garment) => ({
    ...now,
    flaws: [...now.flaws.filter((each) => each.id !== id), flaw(id, radius)].toSorted((x, y) =>
      x.id < y.id ? -1 : 1,
    ),
  })),
  fc
    .constantFrom('a', 'b')
    .map((id) => (now: Garment) => ({ ...now, flaws: now.flaws.filter((f) => f.id !== id) })),
  fc.constantFrom('f1', 'f2', 'f3').map((id) => (now: Garment) => ({
    ...now,
    photos: [...now.photos.filter((photo) => photo !== id), id],
  })),
)

/** A garment after some changes at some times; now and then as an app wrote it that kept no times of its fields. */
const record: fc.Arbitrary<Kept<Garment>> = fc
  .tuple(
    fc.array(fc.tuple(change, fc.integer({ min: 1, max: 6 })), { maxLength: 5 }),
    fc.boolean(),
    fc.option(fc.integer({ min: 6, max: 9 })),
  )
  .map(([changes, isOld, movedTo]) => {
    let now: Kept<Garment> = kept(testGarment(), 1)
    for (const [to, later] of changes)
      now = changedRecord('garments', now, to(now.value), now.changedAt + later)
    if (movedTo !== null) now = movedRecord('garments', now, now.changedAt + movedTo)
    const { unitsChangedAt: _, ...old } = now
    return isOld ? old : now
  })

const join = (a: Kept<Garment>, b: Kept<Garment>) => joinKept('garments', a, b)

describe('two states of a record as one', () => {
  it('are the same whichever comes first', () => {
    fc.assert(fc.property(record, record, (a, b) => void expect(join(a, b)).toEqual(join(b, a))))
  })

  it('are the same in whichever order three of them come together', () => {
    fc.assert(
      fc.property(record, record, record, (a, b, c) => {
        expect(join(join(a, b), c)).toEqual(join(a, join(b, c)))
      }),
      { numRuns: 1000 },
    )
  })

  it('say nothing new when they come together again', () => {
    fc.assert(
      fc.property(record, record, (a, b) => {
        expect(join(a, a)).toBe(a)
        expect(join(join(a, b), a)).toEqual(join(a, b))
        expect(join(join(a, b), b)).toEqual(join(a, b))
      }),
    )
  })

  it('come and go in the same way whichever order changes and removals come in', () => {
    const removal = fc
      .integer({ min: 1, max: 20 })
      .map((removedAt) => contents({}, [{ store: 'garments', id: 'g1', removedAt }]))
    const any = fc.oneof(
      record.map((garment) => contents({ garments: [garment] })),
      removal,
    )
    const entry = any.map((each) => entriesOf(each).get('garments/g1')!)
    fc.assert(
      fc.property(entry, entry, entry, (a, b, c) => {
        const [one, other] = [joinEntries(joinEntries(a, b), c), joinEntries(a, joinEntries(b, c))]
        expect([one.state, one.stamp]).toEqual([other.state, other.stamp])
        expect(joinEntries(b, a)).toEqual(joinEntries(a, b))
      }),
      { numRuns: 1000 },
    )
  })
})

describe('a garment changed on both devices', () => {
  const before = kept(testGarment(), 10)
  const sides = (here: Change, there: Change) => {
    const a = contents({ garments: [changedRecord('garments', before, here(before.value), 20)] })
    const b = contents({ garments: [changedRecord('garments', before, there(before.value), 30)] })
    const common = [{ device: 'tablet', at: 15, stamps: stampsOf(contents({ garments: [before] })) }]
    return mergeContents(side('phone', a, common), side('tablet', b))
  }

  it('keeps a field that only the earlier change touched', () => {
    const merge = sides(
      (now) => ({ ...now, name: 'Mine', measures: { ...now.measures, 'body-length': 700 } }),
      (now) => ({ ...now, place: 'Box', cloth: { ...now.cloth, colour: 'red' } }),
    )
    expect(merge.contents.records.garments[0]?.value).toMatchObject({
      name: 'Mine',
      place: 'Box',
      cloth: { colour: 'red', fibres: 'cotton' },
      measures: { chest: 520, 'body-length': 700 },
    })
    expect(merge.conflicts).toEqual([])
  })

  it('names the fields that both changed, and takes the later', () => {
    const merge = sides(
      (now) => ({ ...now, name: 'Mine', note: 'mine' }),
      (now) => ({ ...now, name: 'Theirs', place: 'Box' }),
    )
    expect(merge.contents.records.garments[0]?.value).toMatchObject({
      name: 'Theirs',
      note: 'mine',
      place: 'Box',
    })
    expect(merge.conflicts).toEqual([
      { store: 'garments', id: 'g1', taken: 'there', units: [{ unit: 'name', taken: 'there' }] },
    ])
  })

  it('has the stains that were marked on either, and not the one that was washed out', () => {
    const stained = { ...before, value: { ...before.value, flaws: [flaw('old', 4)] } }
    const a = changedRecord(
      'garments',
      stained,
      { ...stained.value, flaws: [flaw('new', 5), flaw('old', 4)] },
      20,
    )
    const b = changedRecord('garments', stained, { ...stained.value, flaws: [] }, 30)
    expect(join(a, b).value.flaws.map(({ id }) => id)).toEqual(['new'])
  })

  it('goes by the whole of a record that an older app wrote', () => {
    const old = { ...before, value: { ...before.value, name: 'Old app', place: 'Attic' }, changedAt: 40 }
    const a = changedRecord('garments', before, { ...before.value, name: 'Mine' }, 20)
    expect(join(a, old)).toEqual(expect.objectContaining({ value: old.value, changedAt: 40 }))
  })
})

describe('photos', () => {
  const photo = (id: string, at: number) => ({
    id,
    value: { id, width: 4, height: 3, takenAt: at },
    keptAt: at,
    changedAt: at,
  })
  const first = kept(testGarment({ photos: ['z'] }), 10)
  const withPhotos = (photos: string[], at: number) =>
    changedRecord('garments', first, { ...first.value, photos }, at)

  it('added on both devices are all there, in the order in which they were taken up', () => {
    const a = contents({ garments: [withPhotos(['z', 'y'], 20)], photos: [photo('z', 5), photo('y', 20)] })
    const b = contents({ garments: [withPhotos(['z', 'x'], 15)], photos: [photo('z', 5), photo('x', 15)] })
    for (const [one, other] of [
      [a, b],
      [b, a],
    ] as const) {
      const { contents: after, conflicts } = mergeContents(side('one', one), side('other', other))
      expect(after.records.garments[0]?.value.photos).toEqual(['z', 'x', 'y'])
      expect(after.records.photos.map(({ id }) => id)).toEqual(['x', 'y', 'z'])
      expect(conflicts).toEqual([])
    }
  })

  it('removed on one device are gone from the list', () => {
    const a = contents({ garments: [withPhotos(['z', 'y'], 20)], photos: [photo('z', 5), photo('y', 20)] })
    const b = contents({ garments: [withPhotos([], 15)] }, [{ store: 'photos', id: 'z', removedAt: 15 }])
    const { contents: after } = mergeContents(side('a', a), side('b', b))
    expect(after.records.garments[0]?.value.photos).toEqual(['y'])
    expect(after.records.photos.map(({ id }) => id)).toEqual(['y'])
  })
})

it('a colour wanted on one device and a note on the other are both kept, though the note is later', () => {
  const before = kept(testProject(), 10)
  const a = changedRecord('projects', before, { ...before.value, colours: { main: 'red' } }, 20)
  const b = changedRecord('projects', before, { ...before.value, note: 'gift' }, 30)
  expect(joinKept('projects', a, b).value).toEqual({
    ...before.value,
    colours: { main: 'red' },
    note: 'gift',
  })
})
