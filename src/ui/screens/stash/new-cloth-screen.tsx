import { useSignal } from '@preact/signals'
import { useLocation } from 'wouter-preact'
import { CLOTH_MAKES } from '../../../core/base/terms.ts'
import { emptyGarment, type Garment } from '../../../core/garments/index.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { Screen } from '../../parts/screen.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { FieldsOf } from '../../parts/use-typed.ts'
import { newId } from '../../state/new-id.ts'
import { settings } from '../../state/settings-state.ts'
import { addGarment } from '../../state/stash-state.ts'
import { forgetLeftIn } from '../../state/unfinished.ts'
import { stashWords } from '../../words/en/stash.ts'
import { words } from '../../words/words.ts'

const texts = stashWords.newCloth

/** Under what name the figures of a cloth that is not kept yet are kept. */
const NEW_CLOTH = 'new-cloth'

/** A remnant or length of cloth by width and length, without the steps of a check. The rest is asked on its own page. */
export function NewClothScreen() {
  const [, go] = useLocation()
  const cloth = useSignal<Garment>({ ...emptyGarment('cloth', newId()), measures: {} })
  const { id, name, measures, traits, cloth: made } = cloth.value
  const set = (part: Partial<Garment>) => (cloth.value = { ...cloth.value, ...part })
  const measure = (measureId: string, value: number | null) => {
    const { [measureId]: _, ...others } = cloth.value.measures
    set({ measures: value === null ? others : { ...others, [measureId]: value } })
  }
  const isMeasured = measures['cloth-width'] !== undefined && measures['cloth-length'] !== undefined
  const add = () => {
    addGarment({ ...cloth.value, name: name.trim() || texts.usual })
    forgetLeftIn(NEW_CLOTH)
    go(`/stash/${id}`)
  }
  return (
    <Screen
      title={texts.title}
      back="/stash"
      foot={
        <div class="foot-row">
          <Button look="main" icon="keep" wide disabled={!isMeasured} onPress={add}>
            {texts.add}
          </Button>
        </div>
      }
    >
      <FieldsOf.Provider value={NEW_CLOTH}>
        {(['cloth-width', 'cloth-length'] as const).map((measureId) => (
          <LengthField
            key={measureId}
            id={measureId}
            label={words.garments.measures[measureId]?.name ?? measureId}
            hint={words.garments.measures[measureId]?.how}
            units={settings.value}
            value={measures[measureId] ?? null}
            stepFrom={500}
            isPart={false}
            onValue={(value) => measure(measureId, value)}
          />
        ))}
        <div>
          {(['selvedges', 'hemmed'] as const).map((trait) => (
            <Tick
              key={trait}
              label={texts[trait]}
              checked={traits[trait] ?? false}
              onChange={(on) => set({ traits: { ...traits, [trait]: on } })}
            />
          ))}
        </div>
        <Choice
          name="structure"
          label={words.check.structure}
          options={([...CLOTH_MAKES, 'unknown'] as const).map((value) => ({
            value,
            label: words.check.structures[value],
          }))}
          value={made.structure}
          onChoose={(structure) => set({ cloth: { ...made, structure } })}
        />
        <TextField
          id="cloth-name"
          label={texts.name}
          isPart={false}
          value={name}
          onValue={(text) => set({ name: text })}
        />
        <TextField
          id="cloth-colour"
          label={stashWords.colour}
          isPart={false}
          value={made.colour}
          onValue={(colour) => set({ cloth: { ...cloth.value.cloth, colour } })}
        />
      </FieldsOf.Provider>
    </Screen>
  )
}
