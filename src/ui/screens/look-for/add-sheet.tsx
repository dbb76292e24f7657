import { useSignal } from '@preact/signals'
import type { Pattern } from '../../../core/patterns/index.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Picker } from '../../parts/picker.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { draft } from '../../state/check-state.ts'
import { addThing } from '../../state/look-for.ts'
import { allPatterns } from '../../state/patterns-state.ts'
import { lookForWords } from '../../words/en/look-for.ts'
import { thingDetail } from '../../words/look-for-words.ts'
import { patternName, roleName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'

const ALL = ''

/** Which pattern, version and size goes on the list; what she made last is proposed. */
export function AddSheet({ onClose }: { onClose: () => void }) {
  const patterns = allPatterns()
  const id = useSignal(draft.peek().pattern)
  const pattern = patterns.find((each) => each.id === id.value) ?? patterns[0]
  return (
    <Sheet title={lookForWords.addTitle} onClose={onClose}>
      {pattern ? (
        <div class="stack">
          <Picker
            id="look-for-pattern"
            label={lookForWords.pattern}
            options={patterns.map((each) => ({ value: each.id, label: patternName(each) }))}
            value={pattern.id}
            onPick={(picked) => (id.value = picked)}
          />
          <Choosing key={pattern.id} pattern={pattern} onDone={onClose} />
        </div>
      ) : (
        <p>{words.check.noPatterns}</p>
      )}
    </Sheet>
  )
}

function Choosing({ pattern, onDone }: { pattern: Pattern; onDone: () => void }) {
  const usual = pattern.id === draft.peek().pattern ? draft.peek() : null
  const { sizes, versions } = pattern
  const size = useSignal(usual?.size ?? sizes[Math.floor(sizes.length / 2)] ?? '')
  const version = useSignal(usual?.version ?? versions[0]?.id ?? '')
  const role = useSignal(ALL)
  const roles = rolesOf(pattern, version.value)
  const add = () => {
    const chosen = roles.length > 1 && roles.includes(role.value) ? role.value : null
    const choice = { pattern: pattern.id, version: version.value, size: size.value, role: chosen }
    void addThing(choice, patternName(pattern), thingDetail(pattern, choice))
    onDone()
  }
  return (
    <>
      <Choice
        name="look-for-size"
        label={words.check.size}
        options={sizes.map((name) => ({ value: name, label: name }))}
        value={size.value}
        onChoose={(chosen) => (size.value = chosen)}
      />
      {versions.length > 1 && (
        <Choice
          name="look-for-version"
          label={words.check.version}
          options={versions.map(({ id, name }) => ({ value: id, label: name }))}
          value={version.value}
          onChoose={(chosen) => (version.value = chosen)}
        />
      )}
      {roles.length > 1 && (
        <Choice
          name="look-for-role"
          label={lookForWords.cloth}
          options={[
            { value: ALL, label: lookForWords.allCloths },
            ...roles.map((each) => ({ value: each, label: lookForWords.onlyCloth(roleName(each)) })),
          ]}
          value={roles.includes(role.value) ? role.value : ALL}
          onChoose={(chosen) => (role.value = chosen)}
        />
      )}
      <Button look="main" wide onPress={add}>
        {lookForWords.addThis}
      </Button>
    </>
  )
}

function rolesOf({ versions, pieces }: Pattern, version: string): readonly string[] {
  const needed = versions.find(({ id }) => id === version)?.pieces ?? []
  return [...new Set(pieces.filter(({ id }) => needed.includes(id)).map(({ role }) => role))]
}
