import { checkPacking } from '../../core/packing/check/check-packing.ts'
import type { LayProblem } from '../../core/planning/lay-problem.ts'
import { placementsFrom, translateProblem } from '../../core/planning/translate.ts'
import { answerInWorkers } from '../run-workers.ts'
import { plantedProblem, type Room } from './planted/planted.ts'

/** How many planted problems of one tightness were found. */
export interface PlantedFigure {
  readonly room: Room
  readonly problems: number
  readonly found: number
  /** Least share found that is good enough, per cent. */
  readonly bar: number
  /** Half of the found ones took less than this, ms, starting the workers included. */
  readonly median: number
  readonly missed: readonly { readonly seed: number; readonly problem: LayProblem }[]
}

const ROOMS: readonly { readonly room: Room; readonly bar: number }[] = [
  { room: { inset: 3, dropped: 0 }, bar: 60 },
  { room: { inset: 5, dropped: 0.1 }, bar: 90 },
  { room: { inset: 8, dropped: 0.25 }, bar: 100 },
]

/** Asks two workers for a lay of each of `count` planted problems of each tightness; every problem has one. */
export async function* runPlanted(count: number, seconds: number): AsyncGenerator<PlantedFigure> {
  for (const { room, bar } of ROOMS) {
    const times: number[] = []
    const missed: { seed: number; problem: LayProblem }[] = []
    for (let seed = 1; seed <= count; seed++) {
      const { problem, lay: known } = plantedProblem(seed, room)
      if (!holds(problem, known.placements)) throw new Error(`planted problem ${seed} has no lay`)
      const start = Date.now()
      const lay = await answerInWorkers(problem, 1, 2, start + 1000 * seconds)
      if (lay.verdict === 'cannot') throw new Error(`planted problem ${seed} was refuted`)
      if (lay.verdict === 'fits') times.push(Date.now() - start)
      else missed.push({ seed, problem })
    }
    times.sort((a, b) => a - b)
    const median = times[Math.floor(times.length / 2)] ?? 0
    yield { room, bar, problems: count, found: times.length, median, missed }
  }
}

function holds(problem: LayProblem, placements: Parameters<typeof placementsFrom>[1]): boolean {
  const translation = translateProblem(problem)
  return checkPacking(translation.packing, placementsFrom(translation, placements), []).length === 0
}
