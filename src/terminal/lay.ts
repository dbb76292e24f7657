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

/** Runs the command; the exit code. */
async function run(words: readonly string[], start: number): Promise<number> {
  const asked = readArguments(words)
  if (!asked.ok) return refuse(asked.faults)
  const problem = readProblemFile(asked.value.problemFile)
  if (!problem.ok) return refuse(problem.faults)
  const lay = await answer(problem.value, asked.value, start)
  const unwritten = writeAnswer(problem.value, lay, asked.value)
  return unwritten.length > 0 ? refuse(unwritten) : EXIT[lay.verdict]
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
function writeAnswer(problem: LayProblem, lay: Lay, { outFile, svgFile }: LayArguments): Fault[] {
  const text = `${JSON.stringify(writeLayFile(lay), null, 2)}\n`
  const faults = svgFile === null ? [] : writeFile(svgFile, laySvg(problem, lay))
  if (outFile !== null) return [...faults, ...writeFile(outFile, text)]
  if (faults.length === 0) process.stdout.write(text)
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

function refuse(faults: readonly Fault[]): number {
  for (const { field, message } of faults) process.stderr.write(`${field}: ${message}\n`)
  return EXIT['bad-input']
}

process.exitCode = await run(process.argv.slice(2), Date.now())
