import type { GarmentCloth } from '../../core/stash/cloth-of.ts'
import './drawing.css'
import { boxGrown, boxOf, closedPath, viewBox } from './paths.ts'
import './sheet-drawing.css'

/** Between two panels in a row, mm. */
const GAP = 60

/** All free cloth of a garment in one small picture: its panels in a row, with what is spoilt and what is promised. */
export function ClothSmall({ cloth }: { cloth: GarmentCloth }) {
  let right = 0
  const row = cloth.panels.map((panel) => {
    const { minX, minY, maxX } = boxOf([panel.outline])
    const moved = { panel, dx: right - minX, dy: -minY }
    right += maxX - minX + GAP
    return moved
  })
  const height = Math.max(0, ...cloth.panels.map(({ outline }) => heightOf(outline)))
  const box = boxGrown({ minX: 0, minY: 0, maxX: Math.max(1, right - GAP), maxY: Math.max(1, height) }, 20)
  return (
    <svg class="drawing" viewBox={viewBox(box)} aria-hidden="true">
      {row.map(({ panel, dx, dy }) => (
        <g key={panel.id} transform={`translate(${dx} ${-dy})`}>
          <path class="cloth" d={closedPath(panel.outline)} />
          {panel.flaws.map((area) => (
            <path key={closedPath(area)} class="spoilt" d={closedPath(area)} />
          ))}
          {panel.reserved.map(({ outline }) => (
            <path key={closedPath(outline)} class="promised" d={closedPath(outline)} />
          ))}
        </g>
      ))}
    </svg>
  )
}

function heightOf(outline: Parameters<typeof closedPath>[0]): number {
  const { minY, maxY } = boxOf([outline])
  return maxY - minY
}
