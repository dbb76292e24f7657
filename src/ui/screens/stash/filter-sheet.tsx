import type { StashFilter } from '../../../core/stash/stash-filter.ts'
import { Button } from '../../parts/button.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { settings } from '../../state/settings-state.ts'
import {
  askNothing,
  coloursInUse,
  fibresInUse,
  foundGarments,
  look,
  placesInUse,
  stashFilter,
} from '../../state/stash-view.ts'
import { yieldAsk } from '../../state/stash-yield.ts'
import { stashWords } from '../../words/en/stash.ts'
import { squareUnit, writeHundredths } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { Either, SaidPicker } from './filter-choices.tsx'
import { YieldFields } from './yield-fields.tsx'

const texts = stashWords

/** What a garment must be to be shown: what its cloth does, how much of it is free, where it lies. */
export function FilterSheet({ onClose }: { onClose: () => void }) {
  const { stretch, area, structure, surface, washed, state, colour, fibre, place } = stashFilter.value
  const ask = (filter: Partial<StashFilter>) => look({ filter })
  const square = squareUnit(settings.value)
  return (
    <Sheet title={texts.filter} onClose={onClose}>
      <YieldFields />
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
      <NumberField
        id="filter-area"
        label={texts.freeArea}
        {...AREA_FIELD}
        unit={square.name}
        write={writeHundredths}
        value={area === null ? null : area / square.area}
        onValue={(value) => ask({ area: value ? value * square.area : null })}
      />
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
      <SaidPicker
        id="filter-colour"
        label={texts.colour}
        said={coloursInUse.value}
        value={colour}
        onPick={(value) => ask({ colour: value })}
      />
      <SaidPicker
        id="filter-fibre"
        label={texts.fibre}
        said={fibresInUse.value}
        value={fibre}
        onPick={(value) => ask({ fibre: value })}
      />
      <SaidPicker
        id="filter-place"
        label={texts.place}
        said={placesInUse.value}
        value={place}
        onPick={(value) => ask({ place: value })}
      />
      <div class="filter-foot">
        <div class="foot-row">
          <Button onPress={() => askNothing()}>{texts.filterOff}</Button>
          <Button look="main" wide onPress={onClose}>
            {yieldAsk.value
              ? texts.filterLook(foundGarments.value.length)
              : texts.filterShow(foundGarments.value.length)}
          </Button>
        </div>
      </div>
    </Sheet>
  )
}

const STRETCH_FIELD = { unit: words.parts.percent, least: 0, most: 300, step: 5 }

const AREA_FIELD = { least: 0, most: 50, step: 0.1 }

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
  )
}

const ANY_SIDE = 20
