import { Worker } from 'node:worker_threads'

/** A thread in which TypeScript runs as it does here: threads do not inherit the loader that started this one. */
export function startThread(entry: URL, workerData: unknown): Worker {
  const loader = JSON.stringify(import.meta.resolve('tsx/esm/api'))
  const start = `import(${loader}).then(({ register }) => { register(); return import(${JSON.stringify(entry.href)}) })`
  return new Worker(start, { eval: true, workerData })
}

/** The next thing the thread says; rejects if it breaks before. Whoever calls knows what its messages are. */
export function nextMessage<T>(thread: Worker): Promise<T> {
  return new Promise((resolve, reject) => {
    thread.once('error', reject)
    thread.once('message', (message: T) => {
      thread.off('error', reject)
      resolve(message)
    })
  })
}
