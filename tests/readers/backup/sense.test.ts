import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import stash from '../../../demo-data/projects/stash.json' with { type: 'json' }
import type { Polygon } from '../../../src/core/geometry/types.ts'
import { NO_CONTENTS } from '../../../src/core/records/record.ts'
import { readBackup } from '../../../src/readers/backup/read-backup.ts'
import { writeBackup } from '../../../src/readers/backup/write-backup.ts'
import { kept, testGarment } from '../../support/records.ts'
import {
  GROUND,
  laid,
  rectangle,
  testCut,
  testOffcut,
  testProject,
  testReservation,
} from '../../support/two-devices.ts'

type Shelves = Partial<Record<keyof typeof NO_CONTENTS.records, readonly unknown[]>>

/** Why a backup with these records, whatever they are, is refused; one line a fault. */
async function refusal(records: Shelves, unread: readonly unknown[] = []): Promise<readonly string[]> {
  const contents = { ...NO_CONTENTS, unread, records: { ...NO_CONTENTS.records, ...records } }
  const file = { device: 'd', madeAt: 1, contents, common: [], drafts: {}, pictures: [] }
  const read = readBackup(new Uint8Array(await (await writeBackup(file as never)).arrayBuffer()))
  if (read.ok) return []
  return read.faults.map(
    ({ field, message, record }) =>
      `${record ? `${record.store} “${record.name}”: ` : ''}${field} ${message}`,
  )
}

/** Its sides cross half way. */
const BOW: Polygon = [
  [0, 0],
  [100, 100],
  [100, 0],
  [0, 100],
]
const CROSSES = 'must neither cross nor touch itself'

const first = testReservation({ pieces: [laid('sleeve', 'front', rectangle(0, 0, 100, 100))] })
const cut = testCut({ offcuts: ['o1'] })
const whole = {
  ...GROUND,
  reservations: [kept(first, 1)],
  cuts: [kept(cut, 1)],
  offcuts: [kept(testOffcut(), 1)],
}

describe('a backup whose records make one stash', () => {
  it('is taken', async () => {
    expect(await refusal(whole)).toEqual([])
  })

  it('is taken also when what it hangs on cannot be read, or was put away as it may be', async () => {
    const unread = [{ store: 'garments', id: 'g1', record: { id: 'g1', value: 7 } }]
    expect(await refusal({ ...whole, garments: [] }, unread)).toEqual([])
    const photos = testGarment({ photos: ['gone'] })
    expect(await refusal({ garments: [kept(photos, 1)] })).toEqual([])
    const { projects: _, ...cloth } = { ...whole, reservations: [] }
    expect(await refusal(cloth)).toEqual([])
  })

  it('is that of the demo', async () => {
    const shelves = Object.fromEntries(
      Object.entries(stash).map(([name, values]) => [name, values.map((value) => kept(value, 1))]),
    )
    const garments = [
      ...new Set(stash.reservations.concat(stash.cuts as never).map(({ garment }) => garment)),
    ]
    const owned = garments.map((id) => kept(testGarment({ id }), 1))
    expect(await refusal({ ...shelves, garments: owned })).toEqual([])
  })
})

describe('a backup is refused whole', () => {
  it('for an outline that crosses itself, in a reservation, a cut or an offcut', async () => {
    const reservation = testReservation({ pieces: [laid('sleeve', 'front', BOW)] })
    expect(await refusal({ ...whole, reservations: [kept(reservation, 1)] })).toEqual([
      `reservations “r1”: pieces[0].outline ${CROSSES}`,
    ])
    const pieces = [laid('sleeve', 'front', BOW)]
    expect(await refusal({ ...whole, cuts: [kept({ ...cut, pieces, outline: BOW }, 1)] })).toEqual([
      `cuts “c1”: outline ${CROSSES}`,
      `cuts “c1”: pieces[0].outline ${CROSSES}`,
    ])
    expect(await refusal({ ...whole, offcuts: [kept(testOffcut({ outline: BOW }), 1)] })).toEqual([
      `offcuts “o1”: outline ${CROSSES}`,
    ])
  })

  it('for two reservations of one place, or one that has a place twice', async () => {
    const second = testReservation({
      id: 'r2',
      pieces: [
        laid('cuff', 'back', rectangle(0, 0, 50, 50)),
        laid('hood', 'front', rectangle(99, 0, 50, 50)),
      ],
    })
    expect(await refusal({ ...whole, reservations: [kept(first, 1), kept(second, 1)] })).toEqual([
      'reservations “r2”: pieces[1] lies on piece “sleeve” 1 of reservation “r1”',
    ])
    const beside = { ...second, pieces: [laid('hood', 'front', rectangle(100, 0, 50, 50))] }
    expect(await refusal({ ...whole, reservations: [kept(first, 1), kept(beside, 1)] })).toEqual([])
    const twice = testReservation({
      pieces: [...first.pieces, laid('hood', 'front', rectangle(50, 50, 9, 9))],
    })
    expect(await refusal({ ...whole, reservations: [kept(twice, 1)] })).toEqual([
      'reservations “r1”: pieces[1] lies on piece “sleeve” 1 of reservation “r1”',
    ])
  })

  it('for ids of what is not there', async () => {
    expect(await refusal({ ...whole, garments: [] })).toEqual([
      'reservations “r1”: garment must be the id of a garment in the file',
      'cuts “c1”: garment must be the id of a garment in the file',
      'offcuts “o1”: garment must be the id of a garment in the file',
    ])
    expect(await refusal({ ...whole, projects: [] })).toEqual([
      'reservations “r1”: project must be the id of a project in the file',
    ])
    expect(await refusal({ ...whole, cuts: [] })).toEqual([
      'offcuts “o1”: cut must be the id of a cut in the file',
    ])
    const other = [...GROUND.garments, kept(testGarment({ id: 'g2' }), 1)]
    const stray = testOffcut({ garment: 'g2' })
    expect(await refusal({ ...whole, garments: other, offcuts: [kept(stray, 1)] })).toEqual([
      'offcuts “o1”: garment must be that of its cut',
    ])
  })

  it('for a panel that was cut twice', async () => {
    const cuts = [kept(cut, 1), kept(testCut({ id: 'c2' }), 1)]
    expect(await refusal({ ...whole, cuts })).toEqual(['cuts “c2”: panel is cut by another cut too'])
  })

  it('for a measure that no garment has', async () => {
    for (const chest of [0, -520])
      expect(await refusal({ garments: [kept(testGarment({ measures: { chest } }), 1)] })).toEqual([
        'garments “Striped T-shirt”: measures.chest must be more than 0',
      ])
  })
})

describe('a name of 10,000 letters', () => {
  const name = 'n'.repeat(10_000)

  it('is never repeated, wherever it stands', async () => {
    const twice = { [`photos/${name}.jpg`]: strToU8('a'), 'backup.json': strToU8('{}') }
    const odd = zipSync({ [name]: strToU8('a'), 'backup.json': strToU8('{}') })
    const files = [zipSync(twice), odd].map((bytes) => JSON.stringify(readBackup(bytes)))
    const garments = [
      { ...testGarment(), name },
      { ...testGarment(), id: name },
      { ...testGarment(), kind: name },
      { ...testGarment(), [name]: 1 },
      { ...testGarment(), measures: { [name]: 3 } },
      { ...testGarment(), photos: [name] },
      { ...testGarment(), labelSize: name },
    ]
    const records = await Promise.all(
      garments.map(async (garment) => (await refusal({ garments: [kept(garment, 1)] })).join('\n')),
    )
    const project = { ...testProject(), version: name, size: name, colours: { [name]: 'blue' } }
    const ofProject = (await refusal({ projects: [kept(project, 1)] })).join('\n')
    for (const said of [...files, ...records, ofProject]) {
      expect(said).not.toBe('')
      expect(said.length).toBeLessThan(1_500)
    }
  })
})
