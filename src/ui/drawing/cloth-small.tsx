import type { GarmentCloth } from '../../core/stash/cloth-of.ts'
import './drawing.css'
import { panelsInRows } from './panels-in-rows.ts'
import { boxGrown, closedPath, viewBox } from './paths.ts'
import './sheet-drawing.css'

/** All free cloth of a garment in one small picture: its panels in rows, with what is spoilt and what is promised. */
export function ClothSmall({ cloth }: { cloth: GarmentCloth }) {
  const { placed, width, height } = panelsInRows(cloth.panels)
  const box = boxGrown({ minX: 0, minY: -Math.max(1, height), maxX: Math.max(1, width), maxY: 0 }, 20)
  return (
    <svg class="drawing" viewBox={viewBox(box)} aria-hidden="true">
      {placed.map(({ panel, dx, dy }) => (
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
