import type { BriefsFigure } from './run-briefs.ts'
import { type GarmentsFigure, MILLISECONDS } from './run-garments.ts'
import type { GrowthFigure } from './run-growth.ts'
import type { LateFigure } from './run-late.ts'
import type { PlantedFigure } from './run-planted.ts'
import type { SpareFigure } from './run-spares.ts'
import type { StoppingFigure } from './run-stopping.ts'
import type { StripFigure } from './run-strips.ts'

/** Figures as lines of text. */

function share({ published }: StripFigure, density: number): number | null {
  return published === null ? null : (100 * density) / published
}

export function stripRow(figure: StripFigure): string {
  const cells = figure.densities.map(({ density }) => {
    const part = share(figure, density)
    return `${density.toFixed(2).padStart(6)} (${part === null ? '    -' : part.toFixed(1).padStart(5)})`
  })
  return `${figure.name.padEnd(10)} ${cells.join('  ')}`
}

export function stripMeanRow(figures: readonly StripFigure[], marks: readonly number[]): string {
  const cells = marks.map((_, m) => {
    const shares = figures.flatMap((figure) => share(figure, figure.densities[m]?.density ?? 0) ?? [])
    return `        ${(shares.reduce((sum, part) => sum + part, 0) / shares.length).toFixed(1).padStart(6)}`
  })
  return `${'mean'.padEnd(10)}${cells.join('   ')}`
}

export function plantedRow({ room, problems, found, bar, median, missed }: PlantedFigure): string {
  const { inset, dropped } = room
  const rate = ((100 * found) / problems).toFixed(0)
  const seeds = missed.length === 0 ? '' : `; not found: seeds ${missed.map(({ seed }) => seed).join(', ')}`
  return `pulled in by ${inset} mm, ${100 * dropped} % dropped: ${found} of ${problems} found, ${rate} % (wanted ${bar} %), median ${median.toFixed(0)} ms${seeds}`
}

export function garmentsRow(figure: GarmentsFigure): string {
  const { pattern, garments, firstRows, allRows, processor, verdicts } = figure
  const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`
  const told = Object.entries(verdicts).map(([verdict, count]) => `${verdict} ${count}`)
  return `${pattern} against ${garments} garments, 2 workers: first rows after ${seconds(firstRows)}, one of each after ${seconds(allRows)} (${seconds(processor)} of processor time); after ${MILLISECONDS / 1000} s ${told.join(', ')}`
}

export function stoppingRow({ stopped, wentOn, goneMedian, goneMost }: StoppingFigure): string {
  return `${stopped} searches stopped midway: none went on for more than ${wentOn.toFixed(0)} ms, thread gone after ${goneMedian.toFixed(0)} ms in the median, ${goneMost.toFixed(0)} ms at most`
}

export function lateRow({ phase, answers, p95, most }: LateFigure): string {
  return `${phase}: ${answers} answers stopped, 95th per cent ${p95.toFixed(0)} ms late, ${most.toFixed(0)} ms at most`
}

export function growthRow({ panels, pieces, problems, found, median, growth }: GrowthFigure): string {
  const ratio = growth === null ? '' : `, ${growth.toFixed(1)} times a quarter of the pieces`
  return `${pieces} pieces on ${panels} panels: ${found} of ${problems} found, median ${(median / 1000).toFixed(1)} s${ratio}`
}

export function spareRow({ lays, median, p95, spare }: SpareFigure): string {
  return `spare of ${lays} lays: processor time ${median.toFixed(0)} ms in the median, 95th per cent ${p95.toFixed(0)} ms; ${spare.toFixed(1)} mm in the mean`
}

export function briefsRow({ briefs, firstMedian, median, p95, found, none, open }: BriefsFigure): string {
  const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`
  return `what to look for: ${briefs} briefs, first figure after ${seconds(firstMedian)} (median), all after ${seconds(median)}, 95th per cent ${seconds(p95)}; ${found} found, ${none} proved to be none, ${open.toFixed(0)} % of the width open (median)`
}
