import type { PanelBody } from '../../core/stash/cloth-of.ts'
import { flow } from '../state/flow.ts'
import './drawing.css'
import { boxGrown, boxOf, closedPath, viewBox } from './paths.ts'
import './sheet-drawing.css'

/** All free cloth of a garment in one small square: its panels, to one scale, with what is spoilt and what is promised. */
export function ClothSmall({ panels }: { panels: readonly PanelBody[] }) {
  const { outlines, box } = flow(
    panels.map(({ outline }) => outline),
    1,
    0.15,
  )
  return (
    <svg class="drawing" viewBox={viewBox(boxGrown(box, 20))} aria-hidden="true">
      {panels.map(({ id, outline, flaws, reserved }, k) => {
        const [from, to] = [boxOf([outline]), boxOf([outlines[k] ?? outline])]
        return (
          <g key={id} transform={`translate(${to.minX - from.minX} ${from.minY - to.minY})`}>
            <path class="cloth" d={closedPath(outline)} />
            {flaws.map((area) => (
              <path key={closedPath(area)} class="spoilt" d={closedPath(area)} />
            ))}
            {reserved.map((place) => (
              <path key={closedPath(place.outline)} class="promised" d={closedPath(place.outline)} />
            ))}
          </g>
        )
      })}
    </svg>
  )
}
