import { TORN_EDGE } from '../../../core/rectangles/index.ts'
import { Choice } from '../../parts/choice.tsx'
import { GapPicker } from '../../parts/gap-picker.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Screen } from '../../parts/screen.tsx'
import { Tick } from '../../parts/tick.tsx'
import { settings } from '../../state/settings-state.ts'
import { type Making, type StripsTyped, stripsTyped, typeStrips } from '../../state/strips-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { writeSmall } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import './notions.css'
import { StripsResult } from './strips-result.tsx'

const texts = notionWords
const MAKINGS = ['tiers', 'band', 'ties'] as const satisfies readonly Making[]

/** How many strips of a cloth gathered tiers, a ruffle, a band or ties take. */
export function StripsScreen() {
  const typed = stripsTyped.value
  return (
    <Screen title={texts.strips} back="/notions">
      <p>{texts.stripsAbout}</p>
      <Choice
        name="making"
        label={texts.making}
        options={MAKINGS.map((value) => ({ value, label: texts.makings[value] }))}
        value={typed.making}
        onChoose={(making) => typeStrips({ making })}
      />
      <Edge typed={typed} />
      {typed.making === 'tiers' ? <TierFields typed={typed} /> : <BandFields typed={typed} />}
      <GapPicker
        id="strips-seam"
        label={texts.seam}
        hint=""
        value={typed.seam}
        units={settings.value}
        onPick={(seam) => typeStrips({ seam })}
      />
      <ClothFields typed={typed} />
      <StripsResult typed={typed} />
    </Screen>
  )
}

interface TypedProps {
  readonly typed: StripsTyped
}

type LengthOf = 'edge' | 'length' | 'height' | 'clothWidth' | 'clothLength'

function Length({ typed, of, label, hint }: TypedProps & { of: LengthOf; label: string; hint?: string }) {
  return (
    <LengthField
      id={`strips-${of}`}
      label={label}
      hint={hint}
      value={typed[of]}
      units={settings.value}
      onValue={(value) => typeStrips({ [of]: value })}
    />
  )
}

function Edge({ typed }: TypedProps) {
  const { making } = typed
  return (
    <>
      {making === 'tiers' && (
        <Length typed={typed} of="edge" label={texts.topEdge} hint={texts.topEdgeHint} />
      )}
      {making === 'band' && <Length typed={typed} of="edge" label={texts.bandEdge} />}
      {making === 'ties' && <Length typed={typed} of="edge" label={texts.tieLength} />}
      {making !== 'ties' && (
        <NumberField
          id="strips-gather"
          label={texts.gather}
          hint={texts.gatherHint}
          value={typed.gather}
          unit={words.parts.percent}
          least={10}
          most={600}
          step={10}
          onValue={(gather) => {
            if (gather !== null) typeStrips({ gather })
          }}
        />
      )}
    </>
  )
}

function TierFields({ typed }: TypedProps) {
  return (
    <>
      <NumberField
        id="strips-tiers"
        label={texts.tierCount}
        value={typed.tiers}
        unit=""
        least={1}
        most={8}
        step={1}
        whole
        onValue={(tiers) => {
          if (tiers !== null) typeStrips({ tiers })
        }}
      />
      <Length typed={typed} of="length" label={texts.fullLength} />
      <GapPicker
        id="strips-hem"
        label={texts.hem}
        hint=""
        value={typed.hem}
        units={settings.value}
        onPick={(hem) => typeStrips({ hem })}
      />
    </>
  )
}

function BandFields({ typed }: TypedProps) {
  return (
    <>
      <Length typed={typed} of="height" label={texts.height} />
      {typed.making === 'band' ? (
        <Tick label={texts.folded} checked={typed.folded} onChange={(folded) => typeStrips({ folded })} />
      ) : (
        <NumberField
          id="strips-copies"
          label={texts.copies}
          value={typed.copies}
          unit=""
          least={1}
          most={20}
          step={1}
          whole
          onValue={(copies) => {
            if (copies !== null) typeStrips({ copies })
          }}
        />
      )}
    </>
  )
}

function ClothFields({ typed }: TypedProps) {
  return (
    <section class="stack" aria-labelledby="strips-cloth">
      <h2 id="strips-cloth">{texts.theCloth}</h2>
      <Length typed={typed} of="clothWidth" label={texts.clothWidth} hint={texts.clothHint} />
      <Length typed={typed} of="clothLength" label={texts.clothLength} />
      <Choice
        name="run"
        label={texts.run}
        options={[
          { value: 'across', label: texts.runs.across },
          { value: 'along', label: texts.runs.along },
        ]}
        value={typed.run}
        onChoose={(run) => typeStrips({ run })}
      />
      <Tick
        label={texts.torn}
        hint={texts.tornHint(writeSmall(TORN_EDGE, settings.value))}
        checked={typed.torn}
        onChange={(torn) => typeStrips({ torn })}
      />
    </section>
  )
}
