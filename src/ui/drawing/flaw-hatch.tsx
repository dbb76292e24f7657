import type { Mm } from '../../core/base/units.ts'
import './drawing.css'

interface FlawHatchProps {
  readonly id: string
  /** Of the whole drawing, mm: the hatching keeps its look at any scale. */
  readonly size: Mm
}

/** The hatching of areas not to be used, to fill with `url(#id)`. */
export function FlawHatch({ id, size }: FlawHatchProps) {
  const step = size * 0.022
  return (
    <defs>
      <pattern id={id} width={step} height={step} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <rect class="hatch-ground" width={step} height={step} />
        <line class="hatch-line" x1="0" x2="0" y1="0" y2={step} />
      </pattern>
    </defs>
  )
}
