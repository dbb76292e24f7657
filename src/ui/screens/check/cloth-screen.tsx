import { useSignal } from '@preact/signals'
import { Redirect } from 'wouter-preact'
import { CLOTH_MAKES } from '../../../core/base/terms.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { rolesOf, stretchAsked } from '../../state/check-draft.ts'
import { draft, kind, pattern, tell } from '../../state/check-state.ts'
import { writePercent } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { StepFrame } from './step-frame.tsx'
import { StretchRuler } from './stretch-ruler.tsx'

const MOST_STRETCH = 400

/** What the cloth is like: how far it stretches, which way it points, which faces serve. */
export function ClothScreen() {
  const ruler = useSignal(false)
  if (!kind.value) return <Redirect to="/" />
  const { stretch } = draft.value
  const set = (change: Partial<typeof stretch>) => tell({ stretch: { ...draft.value.stretch, ...change } })
  return (
    <StepFrame step="cloth" title={words.check.clothTitle}>
      <div class="stack">
        <p>{needWords()}</p>
        <Button icon="measure" onPress={() => (ruler.value = true)}>
          {words.check.byRuler}
        </Button>
        <NumberField
          id="stretch-across"
          label={words.check.across}
          hint={words.check.acrossHint}
          value={stretch.across}
          unit={words.parts.percent}
          least={0}
          most={MOST_STRETCH}
          step={5}
          onValue={(across) => set({ across })}
        />
        <NumberField
          id="stretch-along"
          label={words.check.along}
          hint={words.check.alongHint}
          value={stretch.along}
          unit={words.parts.percent}
          least={0}
          most={MOST_STRETCH}
          step={5}
          onValue={(along) => set({ along })}
        />
      </div>
      <ClothFacts />
      <Roles />
      {ruler.value && <StretchRuler onClose={() => (ruler.value = false)} />}
    </StepFrame>
  )
}

function needWords(): string {
  const making = pattern.value
  if (!making) return words.verdict.missingPattern
  const { across, along } = stretchAsked(making, draft.value.version, draft.value.otherRoles)
  if (across === 0 && along === 0) return words.check.needsNone
  return along > 0
    ? words.check.needs(writePercent(across), writePercent(along))
    : words.check.needsAcross(writePercent(across))
}

/** Which of the pattern's cloths this garment is for; asked only where there is a choice. */
function Roles() {
  const making = pattern.value
  const { version, otherRoles } = draft.value
  const roles = making ? rolesOf(making, version) : []
  if (roles.length < 2) return null
  const set = (role: string, here: boolean) =>
    tell({ otherRoles: here ? otherRoles.filter((each) => each !== role) : [...otherRoles, role] })
  return (
    <fieldset class="choice">
      <legend class="field-label">{words.check.roles}</legend>
      {roles.map((role) => (
        <Tick
          key={role}
          label={words.check.roleNames[role] ?? role}
          checked={!otherRoles.includes(role)}
          onChange={(here) => set(role, here)}
        />
      ))}
      <p class="field-hint">{words.check.rolesHint}</p>
    </fieldset>
  )
}

function ClothFacts() {
  const { cloth } = draft.value
  const set = (change: Partial<typeof cloth>) => tell({ cloth: { ...draft.value.cloth, ...change } })
  return (
    <section class="stack">
      <Choice
        name="structure"
        label={words.check.structure}
        hint={words.check.structureHint}
        options={([...CLOTH_MAKES, 'unknown'] as const).map((value) => ({
          value,
          label: words.check.structures[value],
        }))}
        value={cloth.structure}
        onChoose={(structure) => set({ structure })}
      />
      <Tick
        label={words.check.pile}
        hint={words.check.pileHint}
        checked={cloth.surface === 'one-way'}
        onChange={(checked) => set({ surface: checked ? 'one-way' : 'plain' })}
      />
      {cloth.surface === 'one-way' && (
        <Choice
          name="pile"
          label={words.check.pileWay}
          options={(['down', 'up'] as const).map((value) => ({ value, label: words.check.pileWays[value] }))}
          value={cloth.pile}
          onChoose={(pile) => set({ pile })}
        />
      )}
      <Tick
        label={words.check.faces}
        hint={words.check.facesHint}
        checked={cloth.faces === 2}
        onChange={(checked) => set({ faces: checked ? 2 : 1 })}
      />
    </section>
  )
}
