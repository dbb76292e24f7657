import { deflateRawSync, crc32 as zlibCrc32 } from 'node:zlib'
import fc from 'fast-check'
import { strFromU8, strToU8, unzipSync, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import { NO_CONTENTS } from '../../../src/core/records/record.ts'
import published from '../../../src/readers/backup/backup.schema.json' with { type: 'json' }
import type { Backup } from '../../../src/readers/backup/backup.ts'
import { backupSchema } from '../../../src/readers/backup/backup-schema.ts'
import { crc32 } from '../../../src/readers/backup/crc32.ts'
import { readBackup } from '../../../src/readers/backup/read-backup.ts'
import { fromJson, toJson } from '../../../src/readers/backup/unread.ts'
import { writeBackup } from '../../../src/readers/backup/write-backup.ts'
import { testGarment } from '../../support/records.ts'
import { contents, kept } from '../../support/two-devices.ts'

const JPEG = new Uint8Array([
  0xff,
  0xd8,
  0xff,
  0xe0,
  ...Array.from({ length: 400 }, (_, k) => (k * 37) % 251),
])
const backup: Backup = {
  device: 'phone',
  madeAt: 1_700_000_000_000,
  contents: {
    ...contents(
      {
        garments: [{ ...kept(testGarment({ photos: ['a/b'] }), 3), unitsChangedAt: { name: 2 } }],
        photos: [kept({ id: 'a/b', width: 4, height: 3, takenAt: 1 }, 3)],
      },
      [{ store: 'cuts', id: 'c9', removedAt: 4 }],
    ),
    unread: [{ store: 'projects', id: 'odd', record: { id: 'odd', value: Number.NaN, when: new Date(5) } }],
  },
  common: [{ device: 'tablet', at: 2, stamps: { 'garments/g1': 2 } }],
  settings: { units: 'cm' },
  drafts: { check: { kind: 'dress' } },
  pictures: [{ id: 'a/b', picture: new Blob([JPEG], { type: 'image/jpeg' }) }],
}

const bytesOf = async (from: Backup = backup) => new Uint8Array(await (await writeBackup(from)).arrayBuffer())

/** Why a file is refused, one line a fault. */
function refusal(bytes: Uint8Array): string[] {
  const read = readBackup(bytes)
  if (read.ok) return []
  return read.faults.map(
    ({ field, message, record }) =>
      `${record ? `${record.store} “${record.name}”: ` : ''}${field} ${message}`,
  )
}

type Json = Record<string, never>

/** The backup with its JSON changed, zipped anew by another library's hand. */
async function withJson(change: (json: never) => unknown): Promise<Uint8Array> {
  const files = unzipSync(await bytesOf())
  const json = JSON.parse(strFromU8(files['backup.json'] as Uint8Array)) as Json
  const changed = change(json as never) ?? json
  return zipSync({ ...files, 'backup.json': strToU8(JSON.stringify(changed)) })
}

async function withFiles(change: (files: Record<string, Uint8Array>) => void): Promise<Uint8Array> {
  const files = unzipSync(await bytesOf())
  change(files)
  return zipSync(files)
}

describe('a backup', () => {
  it('comes back as it was', async () => {
    const read = readBackup(await bytesOf())
    if (!read.ok) throw new Error(JSON.stringify(read.faults))
    const { pictures, ...rest } = read.value
    const { pictures: before, ...expected } = backup
    expect(rest).toEqual(expected)
    expect(pictures.map(({ id }) => id)).toEqual(before.map(({ id }) => id))
    expect(await pictures[0]?.picture.arrayBuffer()).toEqual(JPEG.buffer)
  })

  it('is a zip that others can read, its photos by their ids', async () => {
    expect(Object.keys(unzipSync(await bytesOf())).sort()).toEqual(['backup.json', 'photos/a%2Fb.jpg'])
  })

  it('of an older version, without times of single fields, is read', async () => {
    const file = await withJson((json) => ({ ...(json as Json), version: 1 }))
    expect(readBackup(file)).toMatchObject({ ok: true, value: { device: backup.device } })
  })

  it('of nothing comes back as nothing', async () => {
    const nothing = { device: 'd', madeAt: 0, contents: NO_CONTENTS, common: [], drafts: {}, pictures: [] }
    expect(readBackup(await bytesOf(nothing))).toEqual({ ok: true, value: nothing })
  })

  it('has the schema that is published beside the reader', () => {
    const own = JSON.parse(JSON.stringify(z.toJSONSchema(backupSchema, { io: 'input' })))
    expect(published).toEqual(own)
  })
})

describe('a file is refused whole', () => {
  it('when it is no zip, or cut off anywhere', async () => {
    expect(refusal(strToU8('Dear Sir'))).toEqual(['document is not a zip file'])
    expect(refusal(new Uint8Array())).toEqual(['document is not a zip file'])
    const whole = await bytesOf()
    for (let length = 0; length < whole.length; length++)
      expect(refusal(whole.subarray(0, length)).length).toBeGreaterThan(0)
    expect(refusal(whole.subarray(0, whole.length - 1))).toEqual(['document is cut off: its end is missing'])
  })

  it('when it is another zip', () => {
    expect(refusal(zipSync({ 'letter.txt': strToU8('Dear Sir') }))).toEqual([
      'document is not a backup of this app: it holds no “backup.json”',
    ])
    expect(refusal(zipSync({ 'backup.json': strToU8('{"format":"other"}') }))).toEqual([
      'document is not a backup of this app',
    ])
  })

  it('when a byte of what it holds is another, by the CRC', async () => {
    const whole = await bytesOf()
    const photoAt = whole.findIndex((_, k) => JPEG.every((byte, j) => whole[k + j] === byte))
    const damaged = whole.slice()
    damaged[photoAt + 20] = (damaged[photoAt + 20] as number) ^ 1
    expect(refusal(damaged)).toEqual(['document is damaged: “photos/a%2Fb.jpg” in it cannot be unpacked'])
    const json = whole.slice()
    json[60] = (json[60] as number) ^ 0x10
    expect(refusal(json)).toEqual(['document is damaged: “backup.json” in it cannot be unpacked'])
  })

  it('or else says the same, whichever bytes are others', async () => {
    const whole = await bytesOf()
    const plain = readBackup(whole)
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), (at, flip) => {
        const damaged = whole.slice()
        damaged[at] = (damaged[at] as number) ^ flip
        const read = readBackup(damaged)
        if (read.ok && plain.ok) expect(read.value.contents).toEqual(plain.value.contents)
      }),
      { numRuns: 500 },
    )
  })

  it('when it is of a newer format', async () => {
    expect(refusal(await withJson((json) => ({ ...(json as Json), version: 3, novelty: [] })))).toEqual([
      'document was made by a newer version of this app; update the app first',
    ])
  })

  it('when a field is missing or of the wrong kind, naming the record and the field', async () => {
    const wrong = await withJson((json: { records: { garments: { value: { measures: object } }[] } }) => {
      ;(json.records.garments[0] as { value: { measures: object } }).value.measures = { chest: 'wide' }
    })
    expect(refusal(wrong)).toEqual(['garments “Striped T-shirt”: measures.chest must be a finite number'])
    const missing = await withJson((json: { removed?: unknown }) => {
      delete json.removed
    })
    expect(refusal(missing)).toEqual(['removed is missing; it must be a list'])
  })

  it('when a record is there twice or under another’s id', async () => {
    const twice = await withJson((json: { records: { garments: unknown[] } }) => {
      json.records.garments.push(json.records.garments[0])
    })
    expect(refusal(twice)).toEqual(['garments “Striped T-shirt”: records.garments[1] is there twice'])
    const other = await withJson((json: { records: { garments: { id: string }[] } }) => {
      ;(json.records.garments[0] as { id: string }).id = 'else'
    })
    expect(refusal(other)).toEqual(['garments “Striped T-shirt”: id must be the id of its record'])
  })

  it('when a photo is missing, is no picture, or something else is in it', async () => {
    expect(refusal(await withFiles((files) => delete files['photos/a%2Fb.jpg']))).toEqual([
      'photos/a%2Fb.jpg is missing: the photo has no picture',
    ])
    const text = await withFiles((files) => {
      files['photos/a%2Fb.jpg'] = strToU8('hello')
    })
    expect(refusal(text)).toEqual(['document holds “photos/a%2Fb.jpg”, which is no JPEG picture'])
    const script = await withFiles((files) => {
      files['run.js'] = strToU8('1')
    })
    expect(refusal(script)).toEqual(['document holds “run.js”, which no backup of this app does'])
  })

  it('when it would grow out of all measure, before anything is inflated', async () => {
    const bomb = await withFiles((files) => {
      files['photos/a%2Fb.jpg'] = new Uint8Array(5_000_000)
    })
    expect(refusal(bomb)).toEqual([
      'document holds “photos/a%2Fb.jpg”, which would grow larger than any photo',
    ])
    const claims = await bytesOf()
    const view = new DataView(claims.buffer)
    const listAt = view.getUint32(claims.length - 22 + 16, true)
    view.setUint32(listAt + 24, 2_000_000_000, true)
    expect(refusal(claims)).toEqual(['document holds a “backup.json” that is larger than any backup’s'])
  })

  it('when more comes out than its list claims', () => {
    const json = strToU8(JSON.stringify({ format: 'cutworth-backup', filler: 'x'.repeat(50_000) }))
    const zip = zipSync({ 'backup.json': json }).slice()
    const view = new DataView(zip.buffer)
    const listAt = view.getUint32(zip.length - 22 + 16, true)
    view.setUint32(listAt + 24, 1_000, true)
    expect(refusal(zip)).toEqual(['document is damaged: “backup.json” in it cannot be unpacked'])
    expect(deflateRawSync(json).length).toBeLessThan(1_000)
  })
})

describe('CRC-32', () => {
  it('is the one of zip files', () => {
    // Check value of CRC-32/ISO-HDLC for the digits 1 to 9 (ITU-T V.42; catalogue of parametrised CRC algorithms).
    expect(crc32(strToU8('123456789'))).toBe(0xcbf43926)
  })

  it.runIf(typeof zlibCrc32 === 'function')('agrees with zlib', () => {
    fc.assert(fc.property(fc.uint8Array(), (bytes) => crc32(bytes) === zlibCrc32(bytes)))
  })
})

describe('a record that cannot be read', () => {
  it('goes through JSON untouched', () => {
    const odd = fc.anything({ withDate: true, maxDepth: 4 })
    fc.assert(
      fc.property(odd, (value) => {
        if (!isCloneable(value)) return
        const back = fromJson(JSON.parse(JSON.stringify(toJson(value))))
        expect(back).toEqual(value)
      }),
    )
    const dollar = { $: 'number', of: '7' }
    expect(fromJson(JSON.parse(JSON.stringify(toJson(dollar))))).toEqual(dollar)
  })
})

/** What the app could have stored: no functions, symbols or big numbers, which its records never have. */
function isCloneable(value: unknown): boolean {
  if (Array.isArray(value)) return Object.keys(value).length === value.length && value.every(isCloneable)
  if (value === null || typeof value !== 'object')
    return !['bigint', 'symbol', 'function'].includes(typeof value)
  const plain = Object.getPrototypeOf(value) === Object.prototype || value instanceof Date
  return (
    plain &&
    !('__proto__' in Object.assign(Object.create(null), value)) &&
    Object.values(value).every(isCloneable)
  )
}
