import type { Mm } from '../../core/base/units.ts'
import type { Point } from '../../core/geometry/types.ts'
import type { CutNotch } from '../../core/patterns/notches.ts'
import './drawing.css'
import { openPath } from './paths.ts'

type Mark = Pick<CutNotch, 'at' | 'inward' | 'count'>

/** Length of a stroke and distance of two that stand side by side, dots: seen at any scale. */
const LENGTH = 8
const APART = 5

/** Notches as short strokes from the edge inward, one or two side by side. `dots`: mm of the drawing to a dot. */
export function NotchStrokes({ notches, dots }: { notches: readonly Mark[]; dots: Mm }) {
  return (
    <>
      {notches.map((notch) => (
        <path key={openPath([notch.at])} class="notch" d={strokes(notch, dots)} />
      ))}
    </>
  )
}

function strokes({ at: [x, y], inward: [ux, uy], count }: Mark, dots: Mm): string {
  return Array.from({ length: count }, (_, k) => {
    const aside = (k - (count - 1) / 2) * APART * dots
    const from: Point = [x - uy * aside, y + ux * aside]
    return openPath([from, [from[0] + ux * LENGTH * dots, from[1] + uy * LENGTH * dots]])
  }).join('')
}
