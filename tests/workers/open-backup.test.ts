import { describe, expect, it } from 'vitest'
import { type BackupReply, openBackup } from '../../src/workers/open-backup.ts'
import { FakeWorker } from '../support/fake-worker.ts'

const FILE = new Blob(['any'])
const REPLY: BackupReply = { type: 'no-bytes' }

function asked(signal = new AbortController().signal) {
  const worker = new FakeWorker()
  return { worker, reply: openBackup(FILE, signal, () => worker) }
}

describe('reading a backup in a worker', () => {
  it('hands the file over, gives what comes back, and ends the worker', async () => {
    const { worker, reply } = asked()
    expect(worker.asked).toHaveLength(1)
    worker.onmessage?.call(worker as never, { data: REPLY } as MessageEvent)
    expect(await reply).toBe(REPLY)
    expect(worker.ended).toBe(true)
  })

  it('ends the worker at once when another file is chosen', async () => {
    const giving = new AbortController()
    const { worker, reply } = asked(giving.signal)
    giving.abort()
    expect(worker.ended).toBe(true)
    await expect(reply).rejects.toThrow(/abort/i)
  })

  it('starts none for a signal that is aborted already', async () => {
    const spawn = () => {
      throw new Error('must not be started')
    }
    await expect(openBackup(FILE, AbortSignal.abort(), spawn)).rejects.toThrow(/abort/i)
  })

  it('rejects when the worker dies, as of a file that fills its memory', async () => {
    const { worker, reply } = asked()
    worker.crash('out of memory')
    await expect(reply).rejects.toThrow('out of memory')
    expect(worker.ended).toBe(true)
  })
})
