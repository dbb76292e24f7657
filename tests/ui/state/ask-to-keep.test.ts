import { beforeEach, describe, expect, it, vi } from 'vitest'
import { demoId } from '../../../src/core/records/demo.ts'

/** What the browser was asked, in order. */
let heard: string[]
let askToKeep: (id: string) => void

function browser(persisted: boolean, persist: () => Promise<boolean>): void {
  const storage = {
    persisted: async () => persisted,
    persist: () => {
      heard.push('persist')
      return persist()
    },
  }
  vi.stubGlobal('navigator', { storage })
}

beforeEach(async () => {
  heard = []
  // A visit of its own for every test.
  vi.resetModules()
  askToKeep = (await import('../../../src/ui/state/ask-to-keep.ts')).askToKeep
})

async function keeps(...ids: readonly string[]): Promise<readonly string[]> {
  for (const id of ids) askToKeep(id)
  await new Promise((resolve) => setTimeout(resolve))
  return heard
}

describe('the browser', () => {
  it('is asked to keep what is stored at the first thing of hers, and once', async () => {
    browser(false, async () => false)
    expect(await keeps(demoId('tee'))).toEqual([])
    expect(await keeps('mine', 'another')).toEqual(['persist'])
    expect(await keeps('a third')).toEqual(['persist'])
  })

  it('is not asked when it has promised already', async () => {
    browser(true, async () => true)
    expect(await keeps('mine')).toEqual([])
  })

  it('that cannot be asked does no harm', async () => {
    browser(false, () => Promise.reject(new TypeError('no such thing here')))
    expect(await keeps('mine')).toEqual(['persist'])
    vi.stubGlobal('navigator', {})
    expect(await keeps('mine')).toEqual(['persist'])
  })
})
