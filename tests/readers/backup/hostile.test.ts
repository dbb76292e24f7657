import { deflateRawSync } from 'node:zlib'
import { strToU8, zipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { jsonFault } from '../../../src/readers/backup/json-shape.ts'
import { BACKUP_LIMITS } from '../../../src/readers/backup/limits.ts'
import { readBackup } from '../../../src/readers/backup/read-backup.ts'
import { listZip, unpack, type ZipEntry } from '../../../src/readers/backup/unzip.ts'
import { listFault } from '../../../src/readers/backup/zip-list.ts'

const JPEG_START = [0xff, 0xd8, 0xff]

function refusal(bytes: Uint8Array): readonly string[] {
  const read = readBackup(bytes)
  return read.ok ? [] : read.faults.map(({ field, message }) => `${field} ${message}`)
}

/** A zip of this one entry whose list claims another size. */
function claiming(name: string, content: Uint8Array, size: number): Uint8Array {
  const zip = zipSync({ [name]: [content, { level: 9 }] }).slice()
  const view = new DataView(zip.buffer)
  view.setUint32(view.getUint32(zip.length - 22 + 16, true) + 24, size, true)
  return zip
}

function entriesIn(zip: Uint8Array): readonly ZipEntry[] {
  const listed = listZip(zip)
  if (!listed.ok) throw new Error(JSON.stringify(listed.faults))
  return listed.value
}

describe('a zip bomb', () => {
  it('that shrinks to next to nothing is refused by its list, before anything is inflated', () => {
    const bomb = zipSync({ 'backup.json': [new Uint8Array(20_000_000).fill(0x5b), { level: 9 }] })
    expect(bomb.length).toBeLessThan(40_000)
    expect(refusal(bomb)).toEqual(['document holds a “backup.json” that would grow larger than any backup’s'])
  })

  it('whose list claims little is inflated hardly farther than it claims', () => {
    const content = new Uint8Array(20_000_000).fill(0x5b)
    const bomb = claiming('backup.json', content, 5_000)
    const [entry] = entriesIn(bomb) as [ZipEntry]
    let made = 0
    expect(unpack(bomb, entry, (bytes) => (made += bytes))).toBeNull()
    // One part of what is packed grows to a thousand times its size at most.
    expect(made).toBeLessThan(5_000_000)
    expect(refusal(bomb)).toEqual(['document is damaged: “backup.json” in it cannot be unpacked'])
  })

  it('that says less than half of what it holds is found out at the first byte too many', () => {
    const noise = Uint8Array.from({ length: 400_000 }, (_, k) => (k * k * 31 + (k >> 3)) & 0xff)
    const bomb = claiming('backup.json', noise, 200_000)
    const [entry] = entriesIn(bomb) as [ZipEntry]
    let made = 0
    expect(unpack(bomb, entry, (bytes) => (made += bytes))).toBeNull()
    expect(made).toBeLessThan(400_000)
  })

  it('that lists one picture many times over is refused by its list', () => {
    const picture = new Uint8Array([...JPEG_START, ...new Uint8Array(2_000)])
    const zip = zipSync({
      'backup.json': [strToU8('{}'), { level: 0 }],
      'photos/a.jpg': [picture, { level: 0 }],
    })
    const [json, photo] = entriesIn(zip) as [ZipEntry, ZipEntry]
    const many = Array.from({ length: 500 }, (_, k) => ({ ...photo, name: `photos/${k}.jpg` }))
    expect(listFault([json, ...many], zip.length)).toBe('is damaged: its files lie upon one another')
    expect(listFault([json, photo], zip.length)).toBeNull()
  })
})

describe('a list of 20,000 files', () => {
  /** Entries that count how often their name is looked at. */
  function counted(count: number): { entries: readonly ZipEntry[]; looks: () => number } {
    let looks = 0
    const entries = Array.from({ length: count }, (_, k) => ({
      get name() {
        looks++
        return k === 0 ? 'backup.json' : `photos/${k}.jpg`
      },
      packed: 10,
      size: 10,
      crc: 0,
      method: 0 as const,
      at: 100 * k,
    }))
    return { entries, looks: () => looks }
  }

  it('is looked through a few times, not once for each of them', () => {
    const { entries, looks } = counted(20_000)
    expect(listFault(entries, 100_000_000)).toBeNull()
    expect(looks()).toBeGreaterThanOrEqual(20_000)
    expect(looks()).toBeLessThanOrEqual(5 * 20_000)
  })

  it('with one name twice is refused', () => {
    const { entries } = counted(20)
    expect(listFault([...entries, entries[7] as ZipEntry], 100_000)).toBe('holds “photos/7.jpg” twice')
  })

  it('that is longer than any backup’s is refused by its count', () => {
    const { entries, looks } = counted(BACKUP_LIMITS.photos + 2)
    expect(listFault(entries, 100_000_000)).toBe('holds more files than any backup')
    expect(looks()).toBe(0)
  })
})

describe('JSON that no backup has', () => {
  const nested = (depth: number) => strToU8('['.repeat(depth) + ']'.repeat(depth))

  it('nested too deep is refused where it gets too deep', () => {
    expect(jsonFault(nested(BACKUP_LIMITS.depth))).toBeNull()
    expect(jsonFault(nested(BACKUP_LIMITS.depth + 1))).toMatch(/^is nested deeper/)
    const bytes = new Uint8Array(1_000_000).fill(0x5b)
    let read = 0
    const watched = new Proxy(bytes, {
      get(target, key) {
        if (typeof key === 'string' && /^\d+$/.test(key)) read++
        const value = Reflect.get(target, key, target)
        return typeof value === 'function' ? value.bind(target) : value
      },
    })
    expect(jsonFault(watched)).toMatch(/^is nested deeper/)
    expect(read).toBeLessThanOrEqual(BACKUP_LIMITS.depth + 1)
  })

  it('with more values than any backup, or in one record, is refused', () => {
    const zeros = (count: number) => `[${'0,'.repeat(count - 1)}0]`
    expect(jsonFault(strToU8(zeros(BACKUP_LIMITS.values + 1)))).toMatch(/^holds more than any backup/)
    const record = (count: number) => strToU8(`{"records":{"garments":[{"value":${zeros(count)}}]}}`)
    expect(jsonFault(record(1_000))).toBeNull()
    expect(jsonFault(record(BACKUP_LIMITS.recordValues + 1))).toMatch(/^has a record that holds more/)
  })

  it('counts no sign within a text', () => {
    expect(
      jsonFault(strToU8(JSON.stringify({ a: '[[['.repeat(1_000), b: '\\"[['.repeat(1_000) }))),
    ).toBeNull()
  })

  it('gives a backup’s worth of faults and no more', () => {
    const garments = Array.from({ length: 150_000 }, () => 7)
    const records = {
      garments,
      patterns: [],
      projects: [],
      reservations: [],
      cuts: [],
      offcuts: [],
      notions: [],
      photos: [],
    }
    const json = {
      format: 'cutworth-backup',
      version: 1,
      device: 'd',
      madeAt: 1,
      records,
      removed: Array.from({ length: 150_000 }, () => 7),
      unread: [],
      common: [],
      drafts: {},
    }
    const zip = (content: unknown) =>
      zipSync({ 'backup.json': [new Uint8Array(deflatable(content)), { level: 6 }] })
    expect(refusal(zip({ ...json, removed: [] }))).toHaveLength(51)
    expect(refusal(zip(json)).length).toBeLessThanOrEqual(51)
    expect(deflateRawSync(deflatable(json)).length).toBeGreaterThan(0)
  })
})

function deflatable(content: unknown): Uint8Array {
  return strToU8(JSON.stringify(content))
}
