import { Worker } from 'node:worker_threads'

/** A thread in which TypeScript runs as it does here: threads do not inherit the loader that started this one. */
export function startThread(entry: URL, workerData: unknown): Worker {
  const loader = JSON.stringify(import.meta.resolve('tsx/esm/api'))
  const start = `import(${loader}).then(({ register }) => { register(); return import(${JSON.stringify(entry.href)}) })`
  return new Worker(start, { eval: true, workerData })
}
