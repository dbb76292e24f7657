import type { Garment } from '../../../core/garments/index.ts'
import { Field } from '../../parts/field.tsx'
import { GarmentNotes } from '../../parts/garment-notes.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { changeGarment } from '../../state/stash-state.ts'
import { stashWords } from '../../words/en/stash.ts'
import { words } from '../../words/words.ts'

/** What she may change without measuring anew. */
export function Noted({ garment }: { garment: Garment }) {
  const { id, cloth } = garment
  const set = (part: Partial<Garment>) => changeGarment(id, part)
  return (
    <section class="stack" aria-labelledby="noted">
      <h2 id="noted">{stashWords.noted}</h2>
      <Tick label={stashWords.washedBox} checked={garment.washed} onChange={(washed) => set({ washed })} />
      {!garment.washed && <Cautions ids={['unwashed']} />}
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
