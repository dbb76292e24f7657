import type { Mm } from '../../core/base/units.ts'
import type { Box } from '../../core/geometry/types.ts'
import { openPath } from './paths.ts'
import './pieces-drawing.css'

/** Squared paper behind a drawing to scale; its squares begin at the lower left corner of the box. */
export function GridLines({ box, square }: { box: Box; square: Mm }) {
  const { minX, minY, maxX, maxY } = box
  const upright = steps(minX, maxX, square).map((x) =>
    openPath([
      [x, minY],
      [x, maxY],
    ]),
  )
  const level = steps(minY, maxY, square).map((y) =>
    openPath([
      [minX, y],
      [maxX, y],
    ]),
  )
  return <path class="grid-line" d={[...upright, ...level].join('')} />
}

function steps(from: Mm, to: Mm, step: Mm): readonly Mm[] {
  return Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, k) => from + k * step)
}
