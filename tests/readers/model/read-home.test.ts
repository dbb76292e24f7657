import { describe, expect, it } from 'vitest'
import type { Result } from '../../../src/core/base/result.ts'
import type { Polygon } from '../../../src/core/geometry/types.ts'
import { readCut, readOffcut } from '../../../src/readers/model/cut.ts'
import { readNotion } from '../../../src/readers/model/notion.ts'
import { readPhoto } from '../../../src/readers/model/photo.ts'
import { readProject } from '../../../src/readers/model/project.ts'
import { readReservation } from '../../../src/readers/model/reservation.ts'
import { rectangle } from '../../support/lay-problems.ts'
import { aReservation, laidAt } from '../../support/stash.ts'
import { testCut, testOffcut, testProject } from '../../support/two-devices.ts'

const NOTION = {
  id: 'n1',
  kind: 'elastic',
  name: 'Soft elastic',
  width: 12,
  colour: 'white',
  lengths: [900, 25_000],
  count: 0,
  price: null,
  place: 'tin',
  note: '',
}
const PHOTO = { id: 'f1', width: 1200, height: 1600, takenAt: 1_760_000_000_000 }
const laid = laidAt('body', rectangle(100, 100))

const KINDS: readonly [string, (json: unknown) => Result<unknown>, Record<string, unknown>][] = [
  ['project', readProject, { ...testProject(), newCloth: { pricePerMetre: null, width: 1400 } }],
  ['reservation', readReservation, { ...aReservation('r1', [laid]) }],
  ['cut', readCut, { ...testCut({ pieces: [laid], offcuts: ['o1'] }) }],
  ['offcut', readOffcut, { ...testOffcut({ flaws: [rectangle(10, 10)] }) }],
  ['notion', readNotion, NOTION],
  ['photo', readPhoto, PHOTO],
]

describe.each(KINDS)('a stored %s', (_kind, read, right) => {
  it('comes through its gate as it was, from JSON too', () => {
    expect(read(right)).toEqual({ ok: true, value: right })
    expect(read(JSON.parse(JSON.stringify(right)))).toEqual({ ok: true, value: right })
  })

  it('is refused by the name of each field that is missing', () => {
    for (const field of Object.keys(right)) {
      const { [field]: _gone, ...rest } = right
      const result = read(rest)
      expect(result.ok ? [] : result.faults.map((fault) => fault.field)).toContain(field)
    }
  })

  it('is refused for a field that is foreign to it', () => {
    const result = read({ ...right, shoeSize: 39 })
    expect(result).toMatchObject({
      ok: false,
      faults: [{ field: 'shoeSize', message: 'is not known here; remove it' }],
    })
  })

  it.each([null, 7, 'text', [], undefined])('is not %j', (other) => {
    expect(read(other).ok).toBe(false)
  })
})

describe('the gates', () => {
  const faultsOf = (result: Result<unknown>) =>
    result.ok ? [] : result.faults.map(({ field, message }) => `${field} ${message}`)

  it('name the place of what is wrong inside', () => {
    const bent = aReservation('r1', [
      laid,
      {
        ...laid,
        outline: [
          [0, 0],
          [1, Number.NaN],
          [2, 2],
        ],
      },
    ])
    expect(faultsOf(readReservation(bent))).toEqual(['pieces[1].outline[1][1] must be a finite number'])
    expect(faultsOf(readCut({ ...testCut(), at: -1 }))).toEqual(['at must be at least 0'])
    expect(
      faultsOf(
        readOffcut({
          ...testOffcut(),
          outline: [
            [0, 0],
            [1, 1],
          ],
        }),
      ),
    ).toEqual(['outline must have at least 3 entries'])
    expect(faultsOf(readNotion({ ...NOTION, kind: 'spring' }))[0]).toContain('kind must be “elastic” or')
    expect(faultsOf(readReservation(aReservation('r1', [{ ...laid, copy: 0 }])))).toEqual([
      'pieces[0].copy must be at least 1',
    ])
  })

  it('refuse an offcut whose outline crosses or touches itself', () => {
    const eight: Polygon = [
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ]
    const pinched: Polygon = [
      [0, 0],
      [100, 0],
      [100, 100],
      [50, 0],
      [0, 100],
    ]
    for (const outline of [eight, pinched])
      expect(faultsOf(readOffcut({ ...testOffcut(), outline }))).toEqual([
        'outline must neither cross nor touch itself',
      ])
  })

  it('refuse a project whose pattern has no such version or size', () => {
    expect(faultsOf(readProject({ ...testProject(), version: 'long', size: 'XXS' }))).toEqual([
      'version must be the id of one of the pattern’s versions',
      'size must be one of the pattern’s sizes',
    ])
  })
})
