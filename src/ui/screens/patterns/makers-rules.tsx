import { CLOTH_MAKES } from '../../../core/base/terms.ts'
import type { Pattern } from '../../../core/patterns/index.ts'
import { GapPicker } from '../../parts/gap-picker.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { change } from '../../state/edit-pattern.ts'
import { settings } from '../../state/settings-state.ts'
import { words } from '../../words/words.ts'

/** What holds for the whole pattern: what it makes, the gap between pieces, whom to take care of. */
export function MakersRules({ pattern }: { pattern: Pattern }) {
  const { cloths = [] } = pattern
  const set = (part: Partial<Pattern>) => change(pattern.id, (now) => ({ ...now, ...part }))
  const tick = (id: string, holds: boolean) =>
    set({ cautions: holds ? [id, ...pattern.cautions] : pattern.cautions.filter((each) => each !== id) })
  return (
    <section class="stack">
      <GapPicker
        id="pattern-gap"
        label={words.patterns.gap}
        hint={words.patterns.gapHint}
        units={settings.value}
        value={pattern.clearance}
        onPick={(clearance) => set({ clearance })}
      />
      <TextField
        id="pattern-about"
        label={words.patterns.about}
        lines={2}
        value={pattern.about}
        onValue={(about) => set({ about })}
      />
      <fieldset class="choice">
        <legend class="field-label">{words.patterns.cloths}</legend>
        {CLOTH_MAKES.map((make) => (
          <Tick
            key={make}
            label={words.check.structures[make]}
            checked={cloths.includes(make)}
            onChange={(holds) =>
              set({ cloths: CLOTH_MAKES.filter((each) => (each === make ? holds : cloths.includes(each))) })
            }
          />
        ))}
        <p class="field-hint">{words.patterns.clothsHint}</p>
      </fieldset>
      <fieldset class="choice">
        <legend class="field-label">{words.patterns.cautions}</legend>
        {Object.entries(words.patterns.cautionTicks).map(([id, label]) => (
          <Tick
            key={id}
            label={label}
            checked={pattern.cautions.includes(id)}
            onChange={(holds) => tick(id, holds)}
          />
        ))}
      </fieldset>
    </section>
  )
}
