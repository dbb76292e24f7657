import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { describe, expect, inject, it } from 'vitest'
import type { LayProblem } from '../../src/core/planning/lay-problem.ts'
import type { JobRequest, WorkerReply } from '../../src/workers/protocol.ts'
import { phonePage, whenKept } from '../support/phone.ts'
import { squares } from '../support/squares.ts'

/** Address of the solver worker as the build named it. */
function workerAddress(): string {
  const file = readdirSync(join(inject('appFolder'), 'assets')).find((name) =>
    name.startsWith('solver.worker'),
  )
  if (file === undefined) throw new Error('the build has no solver worker')
  return `./assets/${file}`
}

/** Has a worker of the page do the job, and gives back the last thing it says. */
function lastReply(page: Page, asks: LayProblem): Promise<WorkerReply> {
  const request: JobRequest = { kind: 'lay', asks, limits: { seed: 1, seconds: 5 } }
  return page.evaluate(
    ([address, job]) =>
      new Promise<WorkerReply>((resolve, reject) => {
        const worker = new Worker(address, { type: 'module' })
        worker.onmessage = ({ data }) => data.type !== 'progress' && resolve(data)
        worker.onerror = (event) => reject(new Error(event.message || 'the worker did not start'))
        worker.postMessage(job)
      }),
    [workerAddress(), request] as const,
  )
}

describe('the solver worker of the built app', () => {
  it('answers under the page’s security policy', async () => {
    const { page } = await phonePage()
    expect(await lastReply(page, squares(100, 200))).toMatchObject({
      type: 'done',
      answer: { verdict: 'fits' },
    })
  })

  it('answers without network', async () => {
    const { page, context } = await phonePage()
    await whenKept(page)
    await context.setOffline(true)
    await page.reload()
    expect(await lastReply(page, squares(100, 200))).toMatchObject({
      type: 'done',
      answer: { verdict: 'fits' },
    })
  })
})

describe('the page’s security policy', () => {
  it('stops scripts and requests that are not the app’s own', async () => {
    const { page } = await phonePage()
    const stopped = await page.evaluate(async () => {
      const directives: string[] = []
      document.addEventListener('securitypolicyviolation', (event) =>
        directives.push(event.effectiveDirective),
      )
      const script = document.createElement('script')
      script.textContent = 'document.title = "foreign"'
      document.head.append(script)
      await fetch('https://example.com/').catch(() => {})
      // The browser tells of it a little later.
      for (let i = 0; i < 100 && directives.length < 2; i++) await new Promise((done) => setTimeout(done, 20))
      return directives
    })
    expect(stopped.sort()).toEqual(['connect-src', 'script-src-elem'])
    expect(await page.title()).not.toBe('foreign')
  })
})
