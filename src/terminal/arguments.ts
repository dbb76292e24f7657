import { parseArgs } from 'node:util'
import { type Fault, failed, ok, type Result } from '../core/base/result.ts'

/** What the person asked of `lay`. */
export interface LayArguments {
  readonly problemFile: string
  /** null: as the problem says. */
  readonly seconds: number | null
  readonly workers: number
  readonly seed: number
  readonly outFile: string | null
  readonly svgFile: string | null
}

const USAGE = 'lay PROBLEM.json [--seconds N] [--workers N] [--seed N] [--out LAY.json] [--svg LAY.svg]'

const OPTIONS = {
  seconds: { type: 'string' },
  workers: { type: 'string' },
  seed: { type: 'string' },
  out: { type: 'string' },
  svg: { type: 'string' },
} as const

/** More than this is a slip of the keyboard: each worker is a thread. */
const MOST_WORKERS = 64

/** Reads the words after the command's name. Faults name the flag. */
export function readArguments(words: readonly string[]): Result<LayArguments> {
  const faults: Fault[] = []
  const { tokens } = parseArgs({
    args: [...words],
    options: OPTIONS,
    strict: false,
    allowPositionals: true,
    tokens: true,
  })
  const values = new Map<string, string>()
  const files: string[] = []
  for (const token of tokens) {
    if (token.kind === 'positional') files.push(token.value)
    if (token.kind !== 'option') continue
    if (!(token.name in OPTIONS))
      faults.push({ field: token.rawName, message: `is not known; write ${USAGE}` })
    else if (
      token.value === undefined ||
      token.value === '' ||
      (!token.inlineValue && token.value.startsWith('--'))
    )
      faults.push({ field: token.rawName, message: 'needs a value' })
    else if (values.has(token.name)) faults.push({ field: token.rawName, message: 'is given twice' })
    else values.set(token.name, token.value)
  }
  // After an unknown flag nobody can tell its value from a file.
  if (files.length !== 1 && faults.length === 0)
    faults.push({
      field: 'PROBLEM.json',
      message: `must be one file, and ${files.length} are given; write ${USAGE}`,
    })
  const number = (name: string, from: number, to: number, whole: boolean): number | null => {
    const text = values.get(name)
    if (text === undefined) return null
    const value = text.trim() === '' ? Number.NaN : Number(text)
    if (value >= from && value <= to && (!whole || Number.isInteger(value))) return value
    faults.push({
      field: `--${name}`,
      message: `must be a ${whole ? 'whole ' : ''}number from ${from} to ${to}, not “${text}”`,
    })
    return null
  }
  const seconds = number('seconds', 0.01, 86_400, false)
  const workers = number('workers', 1, MOST_WORKERS, true) ?? 1
  const seed = number('seed', 0, 2 ** 32 - 1, true) ?? 1
  if (faults.length > 0) return failed(faults)
  return ok({
    problemFile: files[0] as string,
    seconds,
    workers,
    seed,
    outFile: values.get('out') ?? null,
    svgFile: values.get('svg') ?? null,
  })
}
