import {
  type Point,
  type Polygon,
  polygonArea,
  polygonBox,
  polygonCentroid,
  polygonMoved,
  polygonOriented,
} from '../core/geometry/index.ts'
import type { Lay, LayPlacement } from '../core/planning/lay.ts'
import type { LayPanel, LayProblem, Motif } from '../core/planning/lay-problem.ts'

const GAP = 30
const TITLE = 14
const STYLE = `
    .panel { fill: #f4efe6; stroke: #4a4238 }
    .flaw { fill: #4a4238; fill-opacity: .25; stroke: #4a4238; stroke-dasharray: 3 2 }
    .finished { stroke: #4a4238; stroke-width: 4; stroke-linecap: round }
    .motif { fill: none; stroke: #8a2f5b; stroke-width: 2; stroke-dasharray: 8 3 }
    .piece { fill: #2f6f73; fill-opacity: .22; stroke: #1d4a4d }
    .over { fill: #a65a2a; stroke: #6b3513 }
    .head { fill: none; stroke: #1d4a4d; stroke-linecap: round }
    text { font-family: sans-serif; fill: #221e19 }`

/** A lay drawn to scale: one unit is one millimetre, panels side by side, every piece with its name and an arrow to its head. */
export function laySvg(problem: LayProblem, lay: Lay): string {
  let x = GAP
  const drawn: string[] = []
  let height = 0
  for (const panel of problem.panels) {
    const box = polygonBox(panel.outline)
    const { minX, maxX, maxY, minY } = box
    // SVG's y points down the page, the grain's up it.
    const shift = x - minX
    const onPage = ([px, py]: Point): Point => [px + shift, GAP + TITLE + maxY - py]
    drawn.push(panelSvg(problem, lay, panel, onPage))
    x += maxX - minX + GAP
    height = Math.max(height, maxY - minY)
  }
  const size = [x, height + 2 * GAP + TITLE].map(figure) as [string, string]
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${size[0]}mm" height="${size[1]}mm" viewBox="0 0 ${size[0]} ${size[1]}" stroke-width="1">
  <title>${escaped(`${problem.name || 'Lay'}: ${lay.verdict}`)}</title>
  <style>${STYLE}
  </style>
${drawn.join('\n')}
</svg>
`
}

type OnPage = (point: Point) => Point

function panelSvg(problem: LayProblem, lay: Lay, panel: LayPanel, onPage: OnPage): string {
  const { minX, maxY } = polygonBox(panel.outline)
  const [titleX, titleY] = onPage([minX, maxY])
  const placed = lay.placements.filter((placement) => placement.panel === panel.id)
  return [
    `  <g>`,
    `    <text x="${figure(titleX)}" y="${figure(titleY - 4)}" font-size="${TITLE}">${escaped(panel.id)}</text>`,
    `    ${shapeSvg('panel', panel.outline, onPage)}`,
    ...panel.flaws.map((flaw) => `    ${shapeSvg('flaw', flaw, onPage)}`),
    ...(panel.finished ?? []).map((edge) => `    ${edgeSvg(panel.outline, edge, onPage)}`),
    ...placed.map((placement) => pieceSvg(problem, placement, onPage)),
    // Over the pieces, since a motif is there to be seen.
    ...(panel.motifs ?? []).map((motif) => `    ${motifSvg(motif, onPage)}`),
    `  </g>`,
  ].join('\n')
}

function pieceSvg(problem: LayProblem, placement: LayPlacement, onPage: OnPage): string {
  const { outline, count } = problem.pieces.find(({ id }) => id === placement.piece)!
  const lying = polygonMoved(polygonOriented(outline, placement), placement.x, placement.y)
  const centre = polygonCentroid(lying)
  const size = Math.sqrt(Math.abs(polygonArea(lying)))
  const [x, y] = onPage(centre)
  const name = count > 1 ? `${placement.piece} ${placement.copy}` : placement.piece
  const fontSize = Math.min(size / 8, (1.1 * size) / Math.max(name.length, 1))
  return [
    `    ${shapeSvg(placement.mirrored ? 'piece over' : 'piece', lying, onPage)}`,
    `    ${headSvg(centre, placement.turn, size, onPage)}`,
    `    <text x="${figure(x)}" y="${figure(y)}" font-size="${figure(fontSize)}" text-anchor="middle">${escaped(name)}</text>`,
  ].join('\n')
}

/** An arrow through the middle of the piece that points to its head (+y of its outline). */
function headSvg([x, y]: Point, turn: number, size: number, onPage: OnPage): string {
  const line: Polygon = [
    [0, -0.35 * size],
    [0, 0.35 * size],
    [-0.06 * size, 0.25 * size],
    [0.06 * size, 0.25 * size],
  ]
  const [foot, head, left, right] = polygonMoved(polygonOriented(line, { turn, mirrored: false }), x, y).map(
    onPage,
  )
  return `<path class="head" d="M${pair(foot!)} L${pair(head!)} M${pair(left!)} L${pair(head!)} L${pair(right!)}"/>`
}

function shapeSvg(kind: string, polygon: Polygon, onPage: OnPage): string {
  return `<polygon class="${kind}" points="${polygon.map((point) => pair(onPage(point))).join(' ')}"/>`
}

function pair([x, y]: Point): string {
  return `${figure(x)},${figure(y)}`
}

function edgeSvg(outline: Polygon, edge: number, onPage: OnPage): string {
  const [x1, y1] = onPage(outline[edge]!).map(figure)
  const [x2, y2] = onPage(outline[(edge + 1) % outline.length]!).map(figure)
  return `<line class="finished" x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}"/>`
}

function motifSvg({ id, outline }: Motif, onPage: OnPage): string {
  const name = `<title>${escaped(id)}</title>`
  const points = outline.map((point) => pair(onPage(point))).join(' ')
  return `<polygon class="motif" points="${points}">${name}</polygon>`
}

/** Hundredths of a millimetre are fine enough to draw. */
function figure(value: number): string {
  return String(Math.round(value * 100) / 100)
}

function escaped(text: string): string {
  return text.replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;').replace(/"/g, '&quot;')
}
