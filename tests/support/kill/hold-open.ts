import type { Page } from 'playwright-core'

/**
 * From now on the page's nth request of a writing transaction is the last that it hears of: the transaction stays open in
 * the middle of the write, until the page dies. Resolves once that is so, when `begin` has begun the write.
 */
export async function heldInMidWrite(page: Page, n: number, begin: () => Promise<unknown>): Promise<void> {
  await page.evaluate(watch, n)
  await begin()
  await page.waitForFunction(() => 'isHeld' in window)
}

function watch(n: number): void {
  let count = 0
  /** An open transaction ends by itself once it has nothing to do. */
  const goOn = (store: IDBObjectStore) => {
    store.count().onsuccess = () => goOn(store)
  }
  const hold = (store: IDBObjectStore) => (event: Event) => {
    event.stopImmediatePropagation()
    Object.assign(window, { isHeld: true })
    goOn(store)
  }
  const { prototype } = IDBObjectStore
  for (const name of ['get', 'put', 'delete'] as const) {
    const original = prototype[name] as (...args: unknown[]) => IDBRequest
    Object.assign(prototype, {
      [name](this: IDBObjectStore, ...args: unknown[]) {
        const request = original.apply(this, args)
        if (this.transaction.mode !== 'readwrite') return request
        count += 1
        if (count === n) request.addEventListener('success', hold(this))
        return request
      },
    })
  }
}

/** Ends the page's process, without a word to the page. */
export async function crash(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page)
  const crashed = page.waitForEvent('crash')
  session.send('Page.crash').catch(() => {})
  await crashed
  await page.close()
}
