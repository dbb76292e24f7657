import type { Mm } from '../../core/base/units.ts'
import type { Polygon } from '../../core/geometry/types.ts'
import { boxOf } from './paths.ts'

/** Between two panels, mm. */
const GAP: Mm = 60

/** Where panels go in a picture of all of them, mm, y up: the picture runs from x = 0 to the right and from y = 0 down. */
export interface PanelRows<Panel> {
  readonly placed: readonly { readonly panel: Panel; readonly dx: Mm; readonly dy: Mm }[]
  readonly width: Mm
  readonly height: Mm
}

/** The panels in order, in as many rows as make the picture of them all the nearest to a square. */
export function panelsInRows<Panel extends { readonly outline: Polygon }>(
  panels: readonly Panel[],
): PanelRows<Panel> {
  const widths = panels.map(({ outline }) => widthOf(outline) + GAP)
  const total = widths.reduce((sum, width) => sum + width, 0)
  const tried = panels.map((_, k) => placedIn(rowsUpTo(panels, Math.max(total / (k + 1), ...widths))))
  const side = ({ width, height }: PanelRows<Panel>) => Math.max(width, height)
  const [first, ...others] = tried
  if (!first) return { placed: [], width: 0, height: 0 }
  return others.reduce((best, each) => (side(each) < side(best) ? each : best), first)
}

/** In order into rows no wider than `most`. */
function rowsUpTo<Panel extends { readonly outline: Polygon }>(
  panels: readonly Panel[],
  most: Mm,
): readonly (readonly Panel[])[] {
  const rows: Panel[][] = []
  let left = 0
  for (const panel of panels) {
    const width = widthOf(panel.outline) + GAP
    if (rows.length === 0 || left < width - ROUNDING) {
      rows.push([])
      left = most
    }
    rows.at(-1)?.push(panel)
    left -= width
  }
  return rows
}

/** The panels of each row stand on one line. */
function placedIn<Panel extends { readonly outline: Polygon }>(
  rows: readonly (readonly Panel[])[],
): PanelRows<Panel> {
  let [width, height] = [0, -GAP]
  const placed = rows.flatMap((row) => {
    height += GAP + Math.max(...row.map(({ outline }) => heightOf(outline)))
    let right = 0
    const inRow = row.map((panel) => {
      const { minX, minY } = boxOf([panel.outline])
      const at = { panel, dx: right - minX, dy: -height - minY }
      right += widthOf(panel.outline) + GAP
      return at
    })
    width = Math.max(width, right - GAP)
    return inRow
  })
  return { placed, width, height }
}

/** Sums of widths come out a hair off, mm. */
const ROUNDING: Mm = 1e-6

function widthOf(outline: Polygon): Mm {
  const { minX, maxX } = boxOf([outline])
  return maxX - minX
}

function heightOf(outline: Polygon): Mm {
  const { minY, maxY } = boxOf([outline])
  return maxY - minY
}
