import type { BenchArguments } from './arguments.ts'
import { answerRow } from './figures.ts'
import { PROOF_PROBLEMS } from './proof-problems.ts'
import { puzzles } from './puzzles.ts'
import {
  briefsRow,
  garmentsRow,
  growthRow,
  lateRow,
  plantedRow,
  spareRow,
  stoppingRow,
  stripMeanRow,
  stripRow,
} from './rows.ts'
import { runBriefs } from './run-briefs.ts'
import { runChecks } from './run-checks.ts'
import { runFits } from './run-fits.ts'
import { runGarments } from './run-garments.ts'
import { runGrowth } from './run-growth.ts'
import { runLate } from './run-late.ts'
import { runPlanted } from './run-planted.ts'
import { problemRow, runProblems } from './run-problems.ts'
import { runSpares } from './run-spares.ts'
import { runStopping } from './run-stopping.ts'
import { runStrips } from './run-strips.ts'

type Say = (line: string) => void

/** What a small proof, and what a puzzle, may take. */
const PROOF_SECONDS = 10
const PUZZLE_SECONDS = 60

/** Runs what was asked for, one after another, and says each figure when it is there, or all of them as JSON at the end. */
export async function runBench(asked: BenchArguments, say: Say): Promise<void> {
  const tell: Say = (line) => {
    if (!asked.json) say(line)
  }
  const figures = asked.browser ? await inBrowser(asked, tell) : await figuresOf(asked, tell)
  if (asked.json) say(JSON.stringify(figures, null, 1))
}

async function inBrowser(asked: BenchArguments, say: Say) {
  // Loads the browser driver, which nothing else here needs.
  const { runBrowser } = await import('./run-browser.ts')
  return runBrowser(asked, say)
}

async function figuresOf(asked: BenchArguments, say: Say) {
  if (asked.planted > 0) return { planted: await plantedFigures(asked, say) }
  if (asked.only === 'garments') return { garments: await garmentsFigure(asked, say) }
  if (asked.only === 'stopping') return await stoppingFigures(asked, say)
  if (asked.only === 'growth') return { growth: growthFigures(say) }
  if (asked.only !== undefined) return { strips: stripFigures(asked, say) }
  const fits = runFits()
  say(
    `${fits.name}: ${fits.fits} of ${fits.problems} fit, median ${fits.median.toFixed(0)} ms, 95th per cent ${fits.p95.toFixed(0)} ms`,
  )
  const checks = runChecks(!asked.every)
  say(answerRow(asked.every ? 'demo data, every size' : 'demo data, one size a version', checks))
  const spares = runSpares()
  say(spareRow(spares))
  const garments = await garmentsFigure(asked, say)
  const briefs = runBriefs()
  say(briefsRow(briefs))
  const stopped = await stoppingFigures(asked, say)
  const growth = growthFigures(say)
  const proofs = problemFigures('small proofs', runProblems(PROOF_PROBLEMS, PROOF_SECONDS), say)
  const solved = problemFigures('puzzles', runProblems(puzzles(asked.folder), PUZZLE_SECONDS), say)
  return {
    fits,
    checks,
    spares,
    garments,
    briefs,
    ...stopped,
    growth,
    proofs,
    puzzles: solved,
    strips: stripFigures(asked, say),
  }
}

async function garmentsFigure({ garments }: BenchArguments, say: Say) {
  const figure = await runGarments(garments)
  say(garmentsRow(figure))
  return figure
}

async function stoppingFigures({ folder }: BenchArguments, say: Say) {
  const stopping = await runStopping()
  say(stoppingRow(stopping))
  const late = runLate(folder)
  for (const figure of late) say(`  ${lateRow(figure)}`)
  return { stopping, late }
}

function growthFigures(say: Say) {
  return Array.from(runGrowth(), (figure) => {
    say(growthRow(figure))
    return figure
  })
}

function problemFigures(title: string, running: ReturnType<typeof runProblems>, say: Say) {
  say(title)
  return Array.from(running, (figure) => {
    say(`  ${problemRow(figure)}`)
    return figure
  })
}

async function plantedFigures({ planted, seconds }: BenchArguments, say: Say) {
  const figures = []
  for await (const figure of runPlanted(planted, seconds)) {
    say(plantedRow(figure))
    figures.push(figure)
  }
  return figures
}

function stripFigures({ folder, only, seconds }: BenchArguments, say: Say) {
  if (folder === undefined) return []
  const marks = [1, 10, 60].filter((mark) => mark < seconds)
  marks.push(seconds)
  say(`density in per cent of the used strip (share of the best published) after ${marks.join(', ')} s`)
  const figures = Array.from(runStrips(folder, only ?? null, marks), (figure) => {
    say(stripRow(figure))
    return figure
  })
  say(stripMeanRow(figures, marks))
  return figures
}
