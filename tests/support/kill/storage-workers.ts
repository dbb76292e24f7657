import { fileURLToPath } from 'node:url'
import type { BrowserContext, Page } from 'playwright-core'
import { build } from 'vite'
import { inject } from 'vitest'
import type { WorkerNews, WorkerOrder } from './storage-worker.ts'

/** The worker's one script. */
export async function buildStorageWorker(): Promise<string> {
  const entry = fileURLToPath(new URL('storage-worker.ts', import.meta.url))
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    build: { write: false, lib: { entry, formats: ['es'], fileName: 'storage-worker' } },
  })
  const [result] = Array.isArray(built) ? built : [built]
  const chunk = result && 'output' in result ? result.output[0] : undefined
  if (chunk === undefined) throw new Error('the storage worker was not built')
  return chunk.code
}

/** Has the context answer for an empty page, and for the worker's script, as if they were the app's own: they share its stores. */
export async function serveStorageWorker(context: BrowserContext, script: string): Promise<void> {
  const page = { contentType: 'text/html', body: '<!doctype html><title>Storage</title>' }
  await context.route('**/storage-page.html', (route) => route.fulfill(page))
  await context.route('**/storage-worker.js', (route) =>
    route.fulfill({ contentType: 'text/javascript', body: script }),
  )
}

/** A new tab with the empty page. */
export async function openStoragePage(context: BrowserContext): Promise<Page> {
  const page = await context.newPage()
  await page.goto(`${inject('appUrl')}storage-page.html`)
  return page
}

/** Gives each order to a worker of its own; resolves with what each says first, and `hear` gets all they say from then on. */
export async function orderWorkers(
  page: Page,
  orders: readonly WorkerOrder[],
  hear?: (news: WorkerNews) => void,
): Promise<readonly WorkerNews[]> {
  if (hear) await page.exposeFunction('hear', hear)
  return page.evaluate(
    (all) =>
      Promise.all(
        all.map(
          (order) =>
            new Promise<WorkerNews>((resolve, reject) => {
              const worker = new Worker('storage-worker.js', { type: 'module' })
              worker.onerror = (event) => reject(new Error(event.message || 'the worker did not start'))
              worker.onmessage = ({ data }: MessageEvent<WorkerNews>) => {
                ;(window as unknown as { hear?: (news: WorkerNews) => void }).hear?.(data)
                resolve(data)
              }
              worker.postMessage(order)
            }),
        ),
      ),
    orders,
  )
}
