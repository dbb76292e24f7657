import { Redirect } from 'wouter-preact'
import { ButtonLink } from '../../parts/button.tsx'
import { GarmentNotes } from '../../parts/garment-notes.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { addToKept, kept } from '../../state/keep.ts'
import { words } from '../../words/words.ts'
import { ReserveKept } from './reserve-kept.tsx'

/** After keeping: what she may add, none of it asked for. */
export function KeptScreen() {
  const garment = kept.value
  if (!garment) return <Redirect to="/" />
  return (
    <Screen
      title={words.check.kept}
      foot={
        <div class="foot-row">
          <ButtonLink look="main" wide to="/">
            {words.check.nextGarment}
          </ButtonLink>
        </div>
      }
    >
      <p>{words.check.keptHint}</p>
      <ReserveKept garment={garment} />
      <TextField
        id="kept-name"
        label={words.check.name}
        value={garment.name}
        onValue={(name) => void addToKept({ name })}
      />
      <GarmentNotes
        id="kept"
        price={garment.price}
        note={garment.note}
        onPrice={(price) => void addToKept({ price })}
        onNote={(note) => void addToKept({ note })}
      />
      <Tick
        label={words.check.washed}
        checked={garment.washed}
        onChange={(washed) => void addToKept({ washed })}
      />
      {!garment.washed && <Cautions ids={['unwashed']} />}
    </Screen>
  )
}
