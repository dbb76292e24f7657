import { useEffect, useRef } from 'preact/hooks'
import { words } from '../words/words.ts'
import './field.css'

const EIGHTHS = ['1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8']
const SIXTEENTHS = ['1/16', '3/16', '5/16', '7/16', '9/16', '11/16', '13/16', '15/16']

interface FractionKeysProps {
  readonly inchFraction: 8 | 16
  readonly onKey: (fraction: string) => void
}

/** Keys that a phone's number pad lacks. */
export function FractionKeys({ inchFraction, onKey }: FractionKeysProps) {
  const box = useRef<HTMLFieldSetElement>(null)
  useEffect(() => box.current?.scrollIntoView({ block: 'nearest' }), [])
  const keys = inchFraction === 16 ? [...EIGHTHS, ...SIXTEENTHS] : EIGHTHS
  return (
    <fieldset ref={box} class="fractions" aria-label={words.parts.fractions}>
      {keys.map((fraction) => (
        <button
          key={fraction}
          type="button"
          // Keeps the cursor in the figure, so that the keyboard stays.
          onPointerDown={(event) => event.preventDefault()}
          onClick={() => onKey(fraction)}
        >
          {fraction}
        </button>
      ))}
    </fieldset>
  )
}

/** The whole inches already typed, with this fraction in place of any before. */
export function withFraction(text: string, fraction: string): string {
  const whole = /^\s*(\d+)(?![\d/])/.exec(text)?.[1]
  return whole === undefined ? fraction : `${whole} ${fraction}`
}
