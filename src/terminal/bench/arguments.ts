import { parseArgs } from 'node:util'
import { type Fault, failed, ok, type Result } from '../../core/base/result.ts'

/** What the person asked of `bench`. */
export interface BenchArguments {
  /** A folder of published strip-packing cases. */
  readonly folder: string | undefined
  /** For each strip case, and for each planted problem. */
  readonly seconds: number
  /** Only the strip case of this name, or only `garments`; in the browser only this part, as `offline`. */
  readonly only: string | undefined
  /** Only the answers as JSON on standard output. */
  readonly json: boolean
  /** Planted problems of each tightness, if they are asked for. */
  readonly planted: number
  /** Every size of every demo pattern, not a sample. */
  readonly every: boolean
  /** Garments that one pattern is held against. */
  readonly garments: number
  /** What the built app does in Chromium, instead of everything else. */
  readonly browser: boolean
}

const USAGE =
  'bench [FOLDER] [--seconds N] [--only CASE|garments|stopping|growth] [--planted N] [--garments N] [--every] [--browser] [--json]'

export function readBenchArguments(words: readonly string[]): Result<BenchArguments> {
  const parsed = parsedWords(words)
  if (!parsed.ok) return parsed
  const { values, positionals } = parsed.value
  const faults: Fault[] = []
  const number = (name: 'seconds' | 'planted' | 'garments', text: string, least: number): number => {
    const value = Number(text)
    if (!(value >= least && (name === 'seconds' || Number.isInteger(value))))
      faults.push({ field: `--${name}`, message: `must be a number from ${least} on, not “${text}”` })
    return value
  }
  const read: BenchArguments = {
    folder: positionals[0],
    seconds: number('seconds', values.seconds, 0.1),
    only: values.only,
    json: values.json,
    planted: number('planted', values.planted, 0),
    every: values.every,
    garments: number('garments', values.garments, 10),
    browser: values.browser,
  }
  return faults.length > 0 ? failed(faults) : ok(read)
}

function parsedWords(words: readonly string[]) {
  try {
    return ok(
      parseArgs({
        args: [...words],
        allowPositionals: true,
        options: {
          seconds: { type: 'string', default: '10' },
          only: { type: 'string' },
          json: { type: 'boolean', default: false },
          planted: { type: 'string', default: '0' },
          every: { type: 'boolean', default: false },
          garments: { type: 'string', default: '1000' },
          browser: { type: 'boolean', default: false },
        },
      }),
    )
  } catch (error) {
    return failed([{ field: 'bench', message: `${(error as Error).message} Write ${USAGE}` }])
  }
}
