import {
  type GarmentKind,
  type MeasureFault,
  type MeasureSpec,
  measureFaults,
} from '../../../core/garments/index.ts'
import { LengthField } from '../../parts/length-field.tsx'
import { askedMeasures, measuresToDraw, traitsOf } from '../../state/check-draft.ts'
import { draft, tell } from '../../state/check-state.ts'
import { settings } from '../../state/settings-state.ts'
import { writeWithUnit } from '../../words/format.ts'
import { words } from '../../words/words.ts'

interface MeasureFieldsProps {
  readonly kind: GarmentKind
  readonly onActive: (measure: string) => void
}

export function MeasureFields({ kind, onActive }: MeasureFieldsProps) {
  const faults = measureFaults(kind, measuresToDraw(draft.value, kind), traitsOf(draft.value, kind))
  return (
    <>
      {askedMeasures(draft.value, kind).map((spec) => (
        <MeasureField
          key={spec.id}
          spec={spec}
          fault={faults.find(({ measure }) => measure === spec.id) ?? null}
          onActive={() => onActive(spec.id)}
        />
      ))}
    </>
  )
}

interface MeasureFieldProps {
  readonly spec: MeasureSpec
  readonly fault: MeasureFault | null
  readonly onActive: () => void
}

function MeasureField({ spec, fault, onActive }: MeasureFieldProps) {
  const { measures, unread, labelSize } = draft.value
  const value = measures[spec.id] ?? null
  const named = words.garments.measures[spec.id]
  return (
    <LengthField
      id={`measure-${spec.id}`}
      label={named?.name ?? spec.id}
      hint={named?.how}
      query={value === null || fault === null ? null : faultWords(spec, fault)}
      value={value}
      units={settings.value}
      start={labelSize === null ? null : spec.start[labelSize]}
      stepFrom={spec.start[labelSize ?? 'M']}
      unread={unread[spec.id]}
      onValue={(mm, text) => tellMeasure(spec.id, mm, text)}
      onFocus={onActive}
    />
  )
}

/** A figure replaces the text that was none, and the other way about; both gone: not measured. */
function tellMeasure(id: string, mm: number | null, text: string): void {
  const { [id]: _measure, ...measures } = draft.value.measures
  const { [id]: _text, ...unread } = draft.value.unread
  tell({
    measures: mm === null ? measures : { ...measures, [id]: mm },
    unread: text === '' ? unread : { ...unread, [id]: text },
  })
}

function faultWords({ least, most }: MeasureSpec, { code, limit, other }: MeasureFault): string {
  const written = (mm: number) => writeWithUnit(mm, settings.value)
  if (code === 'not-less') {
    return words.parts.lengthLess(written(limit), words.garments.measures[other ?? '']?.name ?? '')
  }
  return words.parts.lengthRange(written(least), written(most))
}
