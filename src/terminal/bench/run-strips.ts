import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { deadlineAfter } from '../../core/base/deadline.ts'
import { packStrip } from '../../core/packing/strip.ts'
import { readStripCase, type StripCase } from './strip-case.ts'

/** Densities of one case, per cent of the used strip, after each of the seconds asked for. */
export interface StripFigure {
  readonly name: string
  readonly published: number | null
  readonly densities: readonly { readonly seconds: number; readonly density: number }[]
}

const clock = () => performance.now()

/** Packs every strip case of a folder once, looking at the clock after each of `marks` seconds. */
export function* runStrips(
  folder: string,
  only: string | null,
  marks: readonly number[],
): Generator<StripFigure> {
  for (const strip of stripCases(folder))
    if (only === null || strip.name === only) yield runStrip(strip, marks)
}

/** The strip cases of a folder, by the names of their files. */
export function* stripCases(folder: string): Generator<StripCase> {
  for (const file of readdirSync(folder)
    .filter((name) => name.endsWith('.json'))
    .sort()) {
    const strip = readStripCase(join(folder, file))
    if (strip) yield strip
  }
}

function runStrip({ name, problem, area, published }: StripCase, marks: readonly number[]): StripFigure {
  const start = clock()
  const found: { at: number; density: number }[] = []
  packStrip(problem, {
    seed: 1,
    clock,
    deadline: deadlineAfter(1000 * Math.max(...marks), clock),
    onProgress: ({ length }) =>
      found.push({ at: (clock() - start) / 1000, density: (100 * area) / (problem.height * length) }),
  })
  const densities = marks.map((seconds) => ({
    seconds,
    density: found.reduce((best, { at, density }) => (at <= seconds ? density : best), 0),
  }))
  return { name, published, densities }
}
