import { parseArgs } from 'node:util'
import { type FitFigure, runFits } from './bench/run-fits.ts'
import { runStrips, type StripFigure } from './bench/run-strips.ts'

/**
 * `npm run bench -- [FOLDER] [--seconds N] [--json] [--only NAME]`: time to an answer for shop checks, and, for a
 * folder of published strip-packing cases, density over time as a share of the best published one. One worker.
 */
const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    seconds: { type: 'string', default: '10' },
    only: { type: 'string' },
    json: { type: 'boolean', default: false },
  },
})

const seconds = Number(values.seconds)
if (!(seconds > 0)) {
  console.error(`--seconds: ${values.seconds} is not a number of seconds above 0`)
  process.exit(2)
}
const marks = [1, 10, 60].filter((mark) => mark < seconds)
marks.push(seconds)

function share({ published }: StripFigure, density: number): number | null {
  return published === null ? null : (100 * density) / published
}

function stripRow(figure: StripFigure): string {
  const cells = figure.densities.map(({ density }) => {
    const part = share(figure, density)
    return `${density.toFixed(2).padStart(6)} (${part === null ? '    -' : part.toFixed(1).padStart(5)})`
  })
  return `${figure.name.padEnd(10)} ${cells.join('  ')}`
}

function meanRow(figures: readonly StripFigure[]): string {
  const cells = marks.map((_, m) => {
    const shares = figures.flatMap((figure) => share(figure, figure.densities[m]?.density ?? 0) ?? [])
    return `        ${(shares.reduce((sum, part) => sum + part, 0) / shares.length).toFixed(1).padStart(6)}`
  })
  return `${'mean'.padEnd(10)}${cells.join('   ')}`
}

function fitRow({ name, problems, fits, median, p95 }: FitFigure): string {
  return `${name}: ${fits} of ${problems} fit, median ${median.toFixed(0)} ms, 95th per cent ${p95.toFixed(0)} ms`
}

const say = (line: string) => {
  if (!values.json) console.log(line)
}

const fits = values.only === undefined ? runFits() : null
if (fits) say(fitRow(fits))
const strips: StripFigure[] = []
const folder = positionals[0]
if (folder !== undefined) {
  say(`density in per cent of the used strip (share of the best published) after ${marks.join(', ')} s`)
  for (const figure of runStrips(folder, values.only ?? null, marks)) {
    strips.push(figure)
    say(stripRow(figure))
  }
  say(meanRow(strips))
}
if (values.json) console.log(JSON.stringify({ fits, strips }, null, 1))
