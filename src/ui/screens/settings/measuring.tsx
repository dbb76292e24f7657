import { useSignal } from '@preact/signals'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { GapPicker } from '../../parts/gap-picker.tsx'
import { changeSettings, settings } from '../../state/settings-state.ts'
import { writeNumber } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { CardRuler } from '../check/card-ruler.tsx'

/** Units, how far a tape may be off, the room for the shears, the ruler on the screen. */
export function Measuring() {
  const { units, inchFraction, tapeDoubt, clearance } = settings.value
  return (
    <>
      <Choice
        name="units"
        label={words.settings.units}
        options={(['cm', 'in'] as const).map((value) => ({ value, label: words.settings.unitNames[value] }))}
        value={units}
        onChoose={(chosen) => changeSettings({ units: chosen })}
      />
      {units === 'in' && (
        <Choice
          name="fraction"
          label={words.settings.fraction}
          options={(['8', '16'] as const).map((value) => ({ value, label: words.settings.fractions[value] }))}
          value={inchFraction === 8 ? '8' : '16'}
          onChoose={(chosen) => changeSettings({ inchFraction: chosen === '8' ? 8 : 16 })}
        />
      )}
      <GapPicker
        id="tape-doubt"
        label={words.settings.tapeDoubt}
        hint={words.settings.tapeDoubtHint}
        value={tapeDoubt}
        units={settings.value}
        onPick={(value) => changeSettings({ tapeDoubt: value })}
      />
      <GapPicker
        id="least-gap"
        label={words.settings.gap}
        hint={words.settings.gapHint}
        value={clearance}
        units={settings.value}
        onPick={(value) => changeSettings({ clearance: value })}
      />
      <Ruler />
    </>
  )
}

/** The true scale of this screen, once a bank card has been held to it. */
function Ruler() {
  const open = useSignal(false)
  const { dotsPerMm } = settings.value
  return (
    <div class="stack">
      <h3>{words.settings.ruler}</h3>
      <p class="field-hint">
        {dotsPerMm === null ? words.settings.rulerGuess : words.settings.rulerSet(writeNumber(dotsPerMm))}
      </p>
      <Button icon="card" onPress={() => (open.value = true)}>
        {dotsPerMm === null ? words.settings.rulerDo : words.settings.rulerAgain}
      </Button>
      {open.value && <CardRuler onClose={() => (open.value = false)} />}
    </div>
  )
}
