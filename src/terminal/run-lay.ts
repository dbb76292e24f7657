import { readFileSync, writeFileSync } from 'node:fs'
import { type Fault, failed, type Result } from '../core/base/result.ts'
import type { Lay } from '../core/planning/lay.ts'
import type { LayProblem } from '../core/planning/lay-problem.ts'
import { writeLayFile } from '../readers/problem-file/lay-schema.ts'
import { readProblem } from '../readers/problem-file/read-problem.ts'
import { answerUntil } from './answer-until.ts'
import { type LayArguments, readArguments } from './arguments.ts'
import { laySvg } from './lay-svg.ts'
import { answerInWorkers } from './run-workers.ts'

const EXIT: Readonly<Record<Lay['verdict'] | 'bad-input', number>> = {
  fits: 0,
  'bad-input': 2,
  cannot: 3,
  'not-found': 4,
}

/** Where the command writes: the process's own streams, or a test's. */
export interface Streams {
  readonly out: (text: string) => void
  readonly err: (text: string) => void
}

/**
 * Runs the command `lay` and gives its exit code. `start` is when it was called, on Date's clock. Faults go to
 * `err`, one a line; nothing goes to `out` unless there is an answer.
 */
export async function runLay(words: readonly string[], start: number, streams: Streams): Promise<number> {
  const asked = readArguments(words)
  if (!asked.ok) return refuse(asked.faults, streams)
  const problem = readProblemFile(asked.value.problemFile)
  if (!problem.ok) return refuse(problem.faults, streams)
  const lay = await answer(problem.value, asked.value, start)
  const unwritten = writeAnswer(problem.value, lay, asked.value, streams)
  return unwritten.length > 0 ? refuse(unwritten, streams) : EXIT[lay.verdict]
}

function readProblemFile(file: string): Result<LayProblem> {
  try {
    return readProblem(readFileSync(file, 'utf8'))
  } catch (error) {
    return failed([{ field: file, message: `cannot be read: ${reason(error)}` }])
  }
}

function answer(
  problem: LayProblem,
  { seconds, seed, workers }: LayArguments,
  start: number,
): Promise<Lay> | Lay {
  const endsAt = start + 1000 * (seconds ?? problem.seconds)
  return workers === 1 ? answerUntil(problem, seed, endsAt) : answerInWorkers(problem, seed, workers, endsAt)
}

/** Writes the lay and its drawing where they were asked for; a fault for each file that cannot be written. */
function writeAnswer(
  problem: LayProblem,
  lay: Lay,
  { outFile, svgFile }: LayArguments,
  streams: Streams,
): Fault[] {
  const text = `${JSON.stringify(writeLayFile(lay), null, 2)}\n`
  const faults = svgFile === null ? [] : writeFile(svgFile, laySvg(problem, lay))
  if (outFile !== null) return [...faults, ...writeFile(outFile, text)]
  if (faults.length === 0) streams.out(text)
  return faults
}

function writeFile(file: string, text: string): Fault[] {
  try {
    writeFileSync(file, text)
    return []
  } catch (error) {
    return [{ field: file, message: `cannot be written: ${reason(error)}` }]
  }
}

function reason(error: unknown): string {
  return error instanceof Error ? error.message.replace(/\s+/g, ' ') : String(error)
}

function refuse(faults: readonly Fault[], streams: Streams): number {
  for (const { field, message } of faults) streams.err(`${field}: ${message}\n`)
  return EXIT['bad-input']
}
