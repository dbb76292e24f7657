/** `asked`: the moment a request is made; `answered`: the moment it succeeds, before anything follows from it. */
export type Moment = 'asked' | 'answered'

/**
 * Counts the requests, of reading and writing, of this worker's writing transactions, and at the nth stops the worker for
 * good in the middle of what it does, after `told`. Gives how to ask for the count.
 */
export function haltAtRequest(n: number, moment: Moment, told: () => void): () => number {
  let count = 0
  const halt = () => {
    told()
    stopForGood()
  }
  const watch = (prototype: object, name: string) => {
    const holder = prototype as Record<string, (...args: unknown[]) => IDBRequest>
    const original = holder[name] as (...args: unknown[]) => IDBRequest
    holder[name] = function (this: unknown, ...args: unknown[]) {
      const request = original.apply(this, args)
      if (request.transaction?.mode !== 'readwrite') return request
      count += 1
      if (count === n && moment === 'asked') halt()
      if (count === n && moment === 'answered') request.addEventListener('success', halt)
      return request
    }
  }
  for (const name of ['get', 'getAll', 'put', 'delete', 'clear']) watch(IDBObjectStore.prototype, name)
  watch(IDBIndex.prototype, 'getAll')
  return () => count
}

/** Waits for what never comes, without keeping the processor busy. */
function stopForGood(): never {
  const { buffer } = new WebAssembly.Memory({ initial: 1, maximum: 1, shared: true })
  for (;;) Atomics.wait(new Int32Array(buffer), 0, 0)
}
