import { NO_FILTER, type StashFilter } from '../../../core/stash/stash-filter.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Picker } from '../../parts/picker.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { settings } from '../../state/settings-state.ts'
import { foundGarments, look, placesInUse, stashFilter } from '../../state/stash-view.ts'
import { stashWords } from '../../words/en/stash.ts'
import { words } from '../../words/words.ts'

const texts = stashWords

/** What a garment must be to be shown: what its cloth does, how much of it is free, where it lies. */
export function FilterSheet({ onClose }: { onClose: () => void }) {
  const { stretch, structure, surface, washed, state, place } = stashFilter.value
  const ask = (filter: Partial<StashFilter>) => look({ filter })
  return (
    <Sheet title={texts.filter} onClose={onClose}>
      <div class="field-pair">
        <NumberField
          id="filter-across"
          label={texts.stretchAcross}
          {...STRETCH_FIELD}
          value={stretch.across || null}
          onValue={(across) => ask({ stretch: { ...stretch, across: across ?? 0 } })}
        />
        <NumberField
          id="filter-along"
          label={texts.stretchAlong}
          {...STRETCH_FIELD}
          value={stretch.along || null}
          onValue={(along) => ask({ stretch: { ...stretch, along: along ?? 0 } })}
        />
      </div>
      <ClearFields />
      <Either
        name="structure"
        label={texts.structure}
        options={texts.made}
        value={structure}
        onChoose={(value) => ask({ structure: value })}
      />
      <Either
        name="surface"
        label={texts.surface}
        options={texts.surfaces}
        value={surface}
        onChoose={(value) => ask({ surface: value })}
      />
      <Either
        name="washed"
        label={texts.washing}
        options={{ yes: texts.washed, no: texts.unwashed }}
        value={washed === null ? null : washed ? 'yes' : 'no'}
        onChoose={(value) => ask({ washed: value === null ? null : value === 'yes' })}
      />
      <Either
        name="state"
        label={texts.state}
        options={texts.states}
        value={state}
        onChoose={(value) => ask({ state: value })}
      />
      {placesInUse.value.length > 0 && (
        <Picker
          id="filter-place"
          label={texts.place}
          value={place ?? ''}
          options={[
            { value: '', label: texts.anyPlace },
            ...placesInUse.value.map((each) => ({ value: each, label: each })),
          ]}
          onPick={(value) => ask({ place: value === '' ? null : value })}
        />
      )}
      <div class="row">
        <Button onPress={() => ask(NO_FILTER)}>{texts.filterOff}</Button>
        <Button look="main" wide onPress={onClose}>
          {texts.filterShow(foundGarments.value.length)}
        </Button>
      </div>
    </Sheet>
  )
}

const STRETCH_FIELD = { unit: words.parts.percent, least: 0, most: 300, step: 5 }

/** A clear rectangle; a side left open may be any. */
function ClearFields() {
  const { clear } = stashFilter.value
  const ask = (width: number | null, height: number | null) => {
    // A finger's breadth stands for a side she does not care about.
    const any = width === null && height === null
    look({ filter: { clear: any ? null : { width: width ?? ANY_SIDE, height: height ?? ANY_SIDE } } })
  }
  const shown = (side: number | undefined) => (side === undefined || side === ANY_SIDE ? null : side)
  const [width, height] = [shown(clear?.width), shown(clear?.height)]
  return (
    <fieldset class="stack">
      <legend class="field-label">{texts.clear}</legend>
      <div class="field-pair">
        <LengthField
          id="filter-width"
          label={texts.clearAcross}
          units={settings.value}
          value={width}
          stepFrom={200}
          onValue={(value) => ask(value, height)}
        />
        <LengthField
          id="filter-height"
          label={texts.clearAlong}
          units={settings.value}
          value={height}
          stepFrom={200}
          onValue={(value) => ask(width, value)}
        />
      </div>
    </fieldset>
  )
}

const ANY_SIDE = 20

interface EitherProps<T extends string> {
  readonly name: string
  readonly label: string
  readonly options: Readonly<Record<T, string>>
  readonly value: T | null
  readonly onChoose: (value: T | null) => void
}

/** One of a few, or no matter which. */
function Either<T extends string>({ name, label, options, value, onChoose }: EitherProps<T>) {
  const listed = Object.entries(options) as [T, string][]
  return (
    <Choice<T | 'any'>
      name={`filter-${name}`}
      label={label}
      options={[
        { value: 'any', label: texts.any },
        ...listed.map(([id, text]) => ({ value: id, label: text })),
      ]}
      value={value ?? 'any'}
      onChoose={(chosen) => onChoose(chosen === 'any' ? null : chosen)}
    />
  )
}
