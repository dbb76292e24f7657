import { useEffect } from 'preact/hooks'
import { useLocation, useParams } from 'wouter-preact'
import { type Garment, kindOf } from '../../../core/garments/index.ts'
import { GarmentDrawing } from '../../drawing/garment-drawing.tsx'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Field } from '../../parts/field.tsx'
import { GarmentNotes } from '../../parts/garment-notes.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Screen } from '../../parts/screen.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { checkAgain } from '../../state/check-again.ts'
import { pattern } from '../../state/check-state.ts'
import { openCloth } from '../../state/cloth-state.ts'
import { openProjects } from '../../state/projects-state.ts'
import { settings } from '../../state/settings-state.ts'
import { changeGarment, dropGarment, garmentById, openStash, stashOpen } from '../../state/stash-state.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeWithUnit } from '../../words/format.ts'
import { clothWords, garmentTitle } from '../../words/garment-words.ts'
import { words } from '../../words/words.ts'
import { PanelFigures } from './panel-figures.tsx'
import { PhotoStrip } from './photo-strip.tsx'
import { Promises } from './promises.tsx'
import { YieldsSection } from './yields-section.tsx'
import './stash.css'

/** One kept garment: what it is, what it opens into, what she noted, and the way to check it again. */
export function GarmentScreen() {
  const { id = '' } = useParams()
  useEffect(() => {
    void openStash()
    void openCloth()
    void openProjects()
  }, [])
  const garment = garmentById(id)
  if (garment) return <Shown key={id} garment={garment} />
  if (!stashOpen.value) return <p class="loading soft">{words.shell.loading}</p>
  return (
    <Screen title={stashWords.gone} back="/stash">
      <ButtonLink look="main" to="/stash">
        {stashWords.toAll}
      </ButtonLink>
    </Screen>
  )
}

function Shown({ garment }: { garment: Garment }) {
  const [, go] = useLocation()
  const name = garmentTitle(garment)
  return (
    <Screen
      title={name}
      back="/stash"
      foot={
        <div class="foot-row">
          <Button look="main" icon="check" wide onPress={() => go(checkAgain(garment))}>
            {pattern.value ? stashWords.againFor(pattern.value.name) : stashWords.again}
          </Button>
        </div>
      }
    >
      <div class="garment-large">
        <GarmentDrawing garment={garment} label={words.check.drawingOf(words.garments.kinds[garment.kind])} />
      </div>
      <p>{clothWords(garment)}</p>
      <PhotoStrip garment={garment} />
      <PanelFigures garment={garment} />
      <Promises garment={garment} />
      <YieldsSection garment={garment} />
      <MeasureList garment={garment} />
      <Noted garment={garment} />
      {!garment.washed && <Cautions ids={['unwashed']} />}
      <Button
        look="danger"
        icon="remove"
        onPress={() => {
          dropGarment(garment, stashWords.removed(name))
          go('/stash')
        }}
      >
        {stashWords.remove}
      </Button>
    </Screen>
  )
}

function MeasureList({ garment }: { garment: Garment }) {
  const measured = kindOf(garment.kind).measures.filter(({ id }) => garment.measures[id] !== undefined)
  if (measured.length === 0) return null
  return (
    <section class="stack" aria-labelledby="measures">
      <h2 id="measures">{stashWords.measures}</h2>
      <dl class="measure-list">
        {measured.map(({ id }) => (
          <div key={id}>
            <dt>{words.garments.measures[id]?.name ?? id}</dt>
            <dd>{writeWithUnit(garment.measures[id] ?? 0, settings.value)}</dd>
          </div>
        ))}
      </dl>
    </section>
  )
}

/** What she may change without measuring anew. */
function Noted({ garment }: { garment: Garment }) {
  const { id, cloth } = garment
  const set = (part: Partial<Garment>) => changeGarment(id, part)
  return (
    <section class="stack" aria-label={words.check.note}>
      <Tick label={stashWords.washedBox} checked={garment.washed} onChange={(washed) => set({ washed })} />
      <Tick
        label={stashWords.usedUp}
        hint={stashWords.usedUpHint}
        checked={garment.usedUp}
        onChange={(usedUp) => set({ usedUp })}
      />
      <TextField
        id="garment-name"
        label={words.check.name}
        value={garment.name}
        onValue={(name) => set({ name })}
      />
      <TextField
        id="garment-place"
        label={stashWords.place}
        hint={stashWords.placeHint}
        value={garment.place}
        onValue={(place) => set({ place })}
      />
      <TextField
        id="garment-colour"
        label={stashWords.colour}
        value={cloth.colour}
        onValue={(colour) => set({ cloth: { ...cloth, colour } })}
      />
      <TextField
        id="garment-fibres"
        label={stashWords.fibres}
        hint={stashWords.fibresHint}
        value={cloth.fibres}
        onValue={(fibres) => set({ cloth: { ...cloth, fibres } })}
      />
      <NumberField
        id="garment-weight"
        label={stashWords.weight}
        value={garment.gramsPerSquareMetre}
        unit={stashWords.weightUnit}
        least={1}
        most={5_000}
        step={10}
        onValue={(gramsPerSquareMetre) => set({ gramsPerSquareMetre })}
      />
      <Field id="garment-bought" label={stashWords.boughtOn}>
        <input
          id="garment-bought"
          class="field-input"
          type="date"
          value={garment.boughtOn ?? ''}
          onChange={(event) => set({ boughtOn: event.currentTarget.value || null })}
        />
      </Field>
      <GarmentNotes
        id="garment"
        price={garment.price}
        note={garment.note}
        onPrice={(price) => set({ price })}
        onNote={(note) => set({ note })}
      />
    </section>
  )
}
