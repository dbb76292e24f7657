import type { Mm } from '../base/units.ts'
import type { Point, Polygon } from '../geometry/types.ts'
import { discAround } from './disc.ts'
import { draftsOf } from './drafts-of.ts'
import type { FlawShape, Garment, MarkedFlaw } from './garment.ts'
import { DRAWN_PANEL } from './kinds/free-outline.ts'
import { kindOf } from './kinds.ts'
import { sewn } from './opening/sewn.ts'
import { startingMeasures } from './starting.ts'

/** Areas of a panel that no piece may use: what came with the garment, then what the user marked. They may overlap. */
export function flawOutlines(garment: Garment, panelId: string): readonly Polygon[] {
  const draft = draftsOf(garment).find((candidate) => candidate.id === panelId)
  const builtIn = draft ? sewn(draft).flaws.map((flaw) => flaw.outline) : []
  const marked = garment.flaws.filter((flaw) => flaw.panel === panelId)
  return [...builtIn, ...marked.flatMap((flaw) => shapeOutlines(flaw.shape))]
}

/** Marked flaws whose panel the garment, as now described, does not have: kept, but asked about. */
export function orphanedFlaws(garment: Garment): readonly MarkedFlaw[] {
  const ids = panelIds(garment)
  return garment.flaws.filter((flaw) => !ids.includes(flaw.panel))
}

/** Traits alone decide which panels there are, so a figure half typed orphans nothing. */
function panelIds({ kind, traits }: Garment): readonly string[] {
  if (kind === 'free-outline') return [DRAWN_PANEL]
  const drafts = kindOf(kind).drafts(startingMeasures(kindOf(kind), null), traits)
  return drafts.map(({ id }) => id)
}

/** Counter-clockwise polygons that together cover the flaw and little else. A shape without area covers nothing. */
export function shapeOutlines(shape: FlawShape): readonly Polygon[] {
  switch (shape.form) {
    case 'round':
      return shape.radius > 0 ? [discAround(shape.centre, shape.radius)] : []
    case 'box':
      return box(shape.from, shape.to)
    case 'line':
      return shape.width > 0 ? stroke(shape.points, shape.width / 2) : []
  }
}

function box(from: Point, to: Point): readonly Polygon[] {
  const [left, right] = [Math.min(from[0], to[0]), Math.max(from[0], to[0])]
  const [bottom, top] = [Math.min(from[1], to[1]), Math.max(from[1], to[1])]
  if (left === right || bottom === top) return []
  return [
    [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ],
  ]
}

/** A disc at every point and a rectangle along every part. */
function stroke(points: readonly Point[], half: Mm): readonly Polygon[] {
  const parts = points.slice(1).flatMap((to, k) => {
    const from = points[k] as Point
    const length = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (length === 0) return []
    const [nx, ny] = [(-(to[1] - from[1]) / length) * half, ((to[0] - from[0]) / length) * half]
    return [
      [
        [from[0] - nx, from[1] - ny],
        [to[0] - nx, to[1] - ny],
        [to[0] + nx, to[1] + ny],
        [from[0] + nx, from[1] + ny],
      ] satisfies Polygon,
    ]
  })
  return [...points.map((point) => discAround(point, half)), ...parts]
}
