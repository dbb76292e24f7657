import { useSignal } from '@preact/signals'
import type { Percent } from '../../../core/base/units.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { GapPicker } from '../../parts/gap-picker.tsx'
import { Picker } from '../../parts/picker.tsx'
import { changeSettings, settings } from '../../state/settings-state.ts'
import { settingsWords } from '../../words/en/settings.ts'
import { writeNumber, writeSmall } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { CardRuler } from '../check/card-ruler.tsx'

/** Units, how far a tape may be off, the room for the shears, the ruler on the screen. */
export function Measuring() {
  const { units, inchFraction, tapeDoubt, stretchDoubt, clearance } = settings.value
  return (
    <>
      <Choice
        name="units"
        label={settingsWords.units}
        options={(['cm', 'in'] as const).map((value) => ({ value, label: settingsWords.unitNames[value] }))}
        value={units}
        onChoose={(chosen) => changeSettings({ units: chosen })}
      />
      {units === 'in' && (
        <Choice
          name="fraction"
          label={settingsWords.fraction}
          options={(['8', '16'] as const).map((value) => ({ value, label: settingsWords.fractions[value] }))}
          value={inchFraction === 8 ? '8' : '16'}
          onChoose={(chosen) => changeSettings({ inchFraction: chosen === '8' ? 8 : 16 })}
        />
      )}
      <GapPicker
        id="tape-doubt"
        label={settingsWords.tapeDoubt}
        hint={settingsWords.tapeDoubtHint(
          writeSmall(5, settings.value, 'nearest'),
          writeSmall(10, settings.value, 'nearest'),
        )}
        value={tapeDoubt}
        units={settings.value}
        onPick={(value) => changeSettings({ tapeDoubt: value })}
      />
      <Picker
        id="stretch-doubt"
        label={settingsWords.stretchDoubt}
        hint={settingsWords.stretchDoubtHint}
        options={pointsWith(stretchDoubt).map((points) => ({
          value: String(points),
          label: points === 0 ? words.parts.none : settingsWords.points(writeNumber(points)),
        }))}
        value={String(stretchDoubt)}
        onPick={(picked) => changeSettings({ stretchDoubt: Number(picked) })}
      />
      <GapPicker
        id="least-gap"
        label={settingsWords.gap}
        hint={settingsWords.gapHint}
        value={clearance}
        units={settings.value}
        onPick={(value) => changeSettings({ clearance: value })}
      />
      <Ruler />
    </>
  )
}

const POINTS: readonly Percent[] = [0, 2, 3, 5, 8, 10, 15]

/** The usual ones, and hers. */
function pointsWith(hers: Percent): readonly Percent[] {
  return [...new Set([...POINTS, hers])].sort((a, b) => a - b)
}

/** The true scale of this screen, once a bank card has been held to it. */
function Ruler() {
  const open = useSignal(false)
  const { dotsPerMm } = settings.value
  return (
    <div class="stack">
      <h3>{settingsWords.ruler}</h3>
      <p class="field-hint">
        {dotsPerMm === null ? settingsWords.rulerGuess : settingsWords.rulerSet(writeNumber(dotsPerMm))}
      </p>
      <Button icon="card" onPress={() => (open.value = true)}>
        {dotsPerMm === null ? settingsWords.rulerDo : settingsWords.rulerAgain}
      </Button>
      {open.value && <CardRuler onClose={() => (open.value = false)} />}
    </div>
  )
}
