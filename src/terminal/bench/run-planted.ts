import type { Worker } from 'node:worker_threads'
import type { LayProblem } from '../../core/planning/lay-problem.ts'
import { nextMessage, startThread } from '../thread.ts'
import { plantedProblem, type Room } from './planted/planted.ts'
import type { PlantedReply, PlantedTask } from './planted/planted-worker.ts'

/** How many planted problems of one tightness were found. */
export interface PlantedFigure {
  readonly room: Room
  readonly problems: number
  readonly found: number
  /** Least share found that is good enough, per cent. */
  readonly bar: number
  /** Half of the found ones took less than this, ms; the workers had been started before. */
  readonly median: number
  readonly missed: readonly { readonly seed: number; readonly problem: LayProblem }[]
}

const ROOMS: readonly { readonly room: Room; readonly bar: number }[] = [
  { room: { inset: 3, dropped: 0 }, bar: 60 },
  { room: { inset: 5, dropped: 0.1 }, bar: 90 },
  { room: { inset: 8, dropped: 0.25 }, bar: 100 },
]

const WORKERS = 2
const ENTRY = new URL('./planted/planted-worker.ts', import.meta.url)

/** Asks two workers for a lay of each of `count` planted problems of each tightness; every problem has one. */
export async function* runPlanted(count: number, seconds: number): AsyncGenerator<PlantedFigure> {
  const pool = new Pool()
  for (const { room, bar } of ROOMS) {
    const times: number[] = []
    const missed: { seed: number; problem: LayProblem }[] = []
    for (let seed = 1; seed <= count; seed++) {
      const { problem } = plantedProblem(seed, room)
      const { verdict, ms } = await pool.answer(problem, seconds)
      if (verdict === 'cannot') throw new Error(`planted problem ${seed} was refuted`)
      if (verdict === 'fits') times.push(ms)
      else missed.push({ seed, problem })
    }
    times.sort((a, b) => a - b)
    const median = times[Math.floor(times.length / 2)] ?? 0
    yield { room, bar, problems: count, found: times.length, median, missed }
  }
  await pool.stop()
}

interface Outcome {
  readonly verdict: Exclude<PlantedReply, 'ready'>
  readonly ms: number
}

/** Workers that search one problem from seeds of their own; who is still at it when another has an answer is replaced. */
class Pool {
  #threads: Worker[] = []

  async answer(problem: LayProblem, seconds: number): Promise<Outcome> {
    await this.#fill()
    const start = performance.now()
    const tasks = this.#threads.map((thread, i) => ask(thread, { problem, seed: 1 + i, seconds }))
    const open = new Set(this.#threads)
    const first = await new Promise<PlantedReply>((resolve, reject) => {
      let left = tasks.length
      tasks.forEach((task, i) => {
        task.then((reply) => {
          open.delete(this.#threads[i] as Worker)
          if (reply !== 'not-found' || --left === 0) resolve(reply)
        }, reject)
      })
    })
    const ms = performance.now() - start
    await Promise.all([...open].map((thread) => thread.terminate()))
    this.#threads = this.#threads.filter((thread) => !open.has(thread))
    return { verdict: first as Outcome['verdict'], ms }
  }

  async #fill(): Promise<void> {
    const missing = WORKERS - this.#threads.length
    const fresh = Array.from({ length: missing }, () => startThread(ENTRY, null))
    await Promise.all(fresh.map((thread) => nextMessage<PlantedReply>(thread)))
    this.#threads.push(...fresh)
  }

  async stop(): Promise<void> {
    await Promise.all(this.#threads.map((thread) => thread.terminate()))
  }
}

function ask(thread: Worker, task: PlantedTask): Promise<PlantedReply> {
  const reply = nextMessage<PlantedReply>(thread)
  thread.postMessage(task)
  return reply
}
