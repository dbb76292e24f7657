import type { Mm } from '../../core/base/units.ts'
import './screen-ruler.css'

export interface RulerMark {
  readonly at: Mm
  readonly label: string
  readonly look: 'hold' | 'relaxed' | 'needed'
}

interface ScreenRulerProps {
  readonly dotsPerMm: number
  readonly length: Mm
  readonly marks: readonly RulerMark[]
}

/** A ruler down the left edge of the screen, to true scale once the screen's size is known, with lines across it. */
export function ScreenRuler({ dotsPerMm, length, marks }: ScreenRulerProps) {
  const ticks = Array.from({ length: Math.floor(length) + 1 }, (_, mm) => mm)
  return (
    <>
      <svg class="ruler-ticks" width="56" height={length * dotsPerMm} aria-hidden="true">
        {ticks.map((mm) => (
          <line key={mm} x1="0" x2={tickWidth(mm)} y1={mm * dotsPerMm} y2={mm * dotsPerMm} />
        ))}
        {ticks
          .filter((mm) => mm > 0 && mm % 10 === 0)
          .map((mm) => (
            <text key={mm} x="34" y={mm * dotsPerMm + 5}>
              {mm / 10}
            </text>
          ))}
      </svg>
      {marks.map(({ at, label, look }) => (
        <div key={look} class={`ruler-mark ruler-mark-${look}`} style={{ top: `${at * dotsPerMm}px` }}>
          <span>{label}</span>
        </div>
      ))}
    </>
  )
}

function tickWidth(mm: number): number {
  return mm % 10 === 0 ? 28 : mm % 5 === 0 ? 20 : 12
}
