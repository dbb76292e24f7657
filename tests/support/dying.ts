import { vi } from 'vitest'

const READS_AND_WRITES = ['get', 'getAll', 'put', 'delete'] as const

type Request = IDBRequest & { readonly source: IDBObjectStore | IDBIndex }

/** `asked`: the moment the request is made; `answered`: the moment it succeeds, before anything follows from it. */
export type Moment = 'asked' | 'answered'

/**
 * Ends the transaction at the nth request, of reading or writing, as the system does when it ends the page. Give
 * `vi.restoreAllMocks()` the last word.
 */
export function dieAtRequest(n: number, moment: Moment): { readonly reached: () => boolean } {
  let requests = 0
  const watch = (prototype: object, name: string) => {
    const holder = prototype as Record<string, (...args: unknown[]) => Request>
    const original = holder[name] as (...args: unknown[]) => Request
    vi.spyOn(holder, name).mockImplementation(function (this: unknown, ...args: unknown[]) {
      const request = original.apply(this, args)
      requests += 1
      const { source } = request
      const transaction = source instanceof IDBIndex ? source.objectStore.transaction : source.transaction
      if (requests === n && moment === 'asked') transaction.abort()
      if (requests === n && moment === 'answered') {
        request.addEventListener('success', () => transaction.abort())
      }
      return request
    })
  }
  for (const name of READS_AND_WRITES) watch(IDBObjectStore.prototype, name)
  watch(IDBIndex.prototype, 'getAll')
  return { reached: () => requests >= n }
}
