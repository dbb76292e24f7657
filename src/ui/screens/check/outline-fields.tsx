import { useSignal } from '@preact/signals'
import { outlineFaults } from '../../../core/garments/index.ts'
import type { Point, Polygon } from '../../../core/geometry/types.ts'
import { OutlineEditor } from '../../drawing/outline-editor.tsx'
import { Button, IconButton } from '../../parts/button.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { draft, tell } from '../../state/check-state.ts'
import { settings } from '../../state/settings-state.ts'
import { writeNumber } from '../../words/format.ts'
import { words } from '../../words/words.ts'

const LEAST_SIDE = 200

/** A shape of her own, corner by corner: by touch on a grid of 10 cm, or by figures. */
export function OutlineFields() {
  const outline = draft.value.outline ?? []
  const reach = Math.max(600, ...outline.flat())
  const side = useSignal(Math.ceil(reach / 100) * 100)
  const put = (next: Polygon) => tell({ outline: next })
  const faults = outline.length === 0 ? [] : outlineFaults(outline)
  return (
    <>
      <p class="soft">{words.check.outlineHint}</p>
      <OutlineEditor outline={outline} side={side.value} label={words.check.outlineDrawing} onOutline={put} />
      {faults.length > 0 && <p class="field-query">{words.check.outlineFault}</p>}
      <div class="row">
        <Button disabled={outline.length === 0} onPress={() => put(outline.slice(0, -1))}>
          {words.check.outlineUndo}
        </Button>
        <Button icon="plus" onPress={() => put([...outline, [side.value / 2, side.value / 2]])}>
          {words.check.outlineAdd}
        </Button>
      </div>
      <LengthField
        id="outline-side"
        label={words.check.outlineSide}
        value={side.value}
        units={settings.value}
        onValue={(mm) => {
          if (mm !== null && mm >= LEAST_SIDE) side.value = mm
        }}
      />
      <ol class="stack">
        {outline.map((point, k) => (
          <li key={k}>
            <Corner
              number={k + 1}
              point={point}
              onPoint={(to) => put(outline.map((each, i) => (i === k ? to : each)))}
              onRemove={() => put(outline.filter((_, i) => i !== k))}
            />
          </li>
        ))}
      </ol>
    </>
  )
}

interface CornerProps {
  readonly number: number
  readonly point: Point
  readonly onPoint: (point: Point) => void
  readonly onRemove: () => void
}

function Corner({ number, point: [x, y], onPoint, onRemove }: CornerProps) {
  const name = words.check.outlineCorner(writeNumber(number))
  return (
    <fieldset class="stack">
      <legend class="field-label">{name}</legend>
      <LengthField
        id={`corner-${number}-x`}
        label={words.check.outlineRight}
        value={x}
        units={settings.value}
        onValue={(mm) => {
          if (mm !== null) onPoint([mm, y])
        }}
      />
      <div class="row">
        <div class="grow">
          <LengthField
            id={`corner-${number}-y`}
            label={words.check.outlineUp}
            value={y}
            units={settings.value}
            onValue={(mm) => {
              if (mm !== null) onPoint([x, mm])
            }}
          />
        </div>
        <IconButton icon="remove" label={`${words.flaws.remove}: ${name}`} onPress={onRemove} />
      </div>
    </fieldset>
  )
}
