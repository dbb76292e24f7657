import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { seededRandom } from '../../src/core/base/random.ts'
import type { Moment } from '../support/kill/halt-at-request.ts'
import { type MortalBrowser, mortalBrowser } from '../support/kill/mortal-browser.ts'
import { type Raw, readRaw, troubleInRaw } from '../support/kill/raw-store.ts'
import type { Kind, WorkerOrder } from '../support/kill/storage-worker.ts'
import {
  buildStorageWorker,
  openStoragePage,
  orderWorkers,
  serveStorageWorker,
} from '../support/kill/storage-workers.ts'

const FURNISHED = 'furnished'

/** Most moments of a kind of write at which it is killed. */
const MOST = 16

let mortal: MortalBrowser
let furnished: Raw
let killedWrites = 0

beforeAll(async () => {
  const script = await buildStorageWorker()
  mortal = await mortalBrowser((context) => serveStorageWorker(context, script))
  const page = await openStoragePage(mortal.context())
  await orderWorkers(page, [{ what: 'furnish', name: FURNISHED }])
  const [raw] = await readRaw(page, [FURNISHED])
  furnished = raw!
  await page.close()
})

afterAll(() => mortal?.close())

const KINDS = [
  'reserving a lay that takes a copy from another',
  'reserving with a garment and a project changed',
  'cutting an offcut that holds another reservation',
  'taking a cut back',
  'keeping a garment',
  'taking a photo up',
  'removing a garment with all that hangs on it',
  'restoring a backup',
  'merging a backup',
] as const satisfies readonly Kind[]

/** Each moment of a write of so many requests, or as many of them as there is time for, evenly. */
function momentsOf(requests: number): readonly (readonly [number, Moment])[] {
  const all = Array.from({ length: requests }, (_, k) =>
    (['asked', 'answered'] as const).map((moment) => [k + 1, moment] as const),
  ).flat()
  if (all.length <= MOST) return all
  return Array.from({ length: MOST }, (_, k) => all[Math.round((k * (all.length - 1)) / (MOST - 1))]!)
}

/** Does the whole write once, and gives how many requests it makes. */
async function wholeWrite(page: Page, kind: Kind): Promise<number> {
  const name = `${kind}, whole`
  const [news] = await orderWorkers(page, [
    { what: 'write', name, furnished: FURNISHED, kind, n: 0, moment: 'asked' },
  ])
  if (news?.said !== 'done') throw new Error(JSON.stringify(news))
  const [after] = await readRaw(page, [name])
  expect(troubleInRaw(after!)).toEqual([])
  expect(after).not.toEqual(furnished)
  return news.requests
}

describe.each(KINDS)('the tab killed while %s', (kind) => {
  it('leaves what was stored before, whole, at whichever request it dies', async () => {
    const page = await openStoragePage(mortal.context())
    const requests = await wholeWrite(page, kind)
    const orders: WorkerOrder[] = momentsOf(requests).map(([n, moment]) => ({
      what: 'write',
      name: `${kind}, ${moment} ${n}`,
      furnished: FURNISHED,
      kind,
      n,
      moment,
    }))
    const news = await orderWorkers(page, orders)
    expect(news.map(({ said }) => said)).toEqual(orders.map(() => 'halted'))
    await mortal.killTabs()
    killedWrites += orders.length
    const again = await openStoragePage(mortal.context())
    for (const raw of await readRaw(
      again,
      orders.map(({ name }) => name),
    )) {
      expect(troubleInRaw(raw)).toEqual([])
      expect(raw).toEqual(furnished)
    }
    await again.close()
  })
})

describe('the phone killed at any moment while she writes on and on', () => {
  const random = seededRandom(1)
  const soon = (ms: number) => new Promise((done) => setTimeout(done, ms))
  let rounds = 0

  /** Writes in several stores at once, kills them all, and looks at each. */
  async function expectWhole(kill: () => Promise<void>): Promise<void> {
    rounds += 1
    const names = [1, 2, 3, 4].map((k) => `written on, ${rounds}, ${k}`)
    const kept = new Set<string>()
    const page = await openStoragePage(mortal.context())
    const orders = names.map((name) => ({ what: 'write on', name, furnished: FURNISHED }) as const)
    const first = await orderWorkers(page, orders, (news) => news.said === 'kept' && kept.add(news.id))
    expect(first.map(({ said }) => said)).toEqual(orders.map(() => 'kept'))
    await soon(random() * 150)
    await kill()
    killedWrites += names.length
    const again = await openStoragePage(mortal.context())
    const there = new Set<string>()
    for (const raw of await readRaw(again, names)) {
      expect(troubleInRaw(raw)).toEqual([])
      for (const { id } of raw.garments!) there.add(id)
    }
    expect([...kept].filter((id) => !there.has(id))).toEqual([])
    await again.close()
  }

  it('has nothing by halves and all that was said to be kept, when its tabs die', async () => {
    for (let k = 0; k < 5; k++) await expectWhole(() => mortal.killTabs())
  })

  it('has them also when the whole browser dies', async () => {
    for (let k = 0; k < 2; k++) await expectWhole(() => mortal.killBrowser())
  })
})

describe('all these kills', () => {
  it('met more than 100 writes', () => {
    expect(killedWrites).toBeGreaterThan(100)
  })
})
