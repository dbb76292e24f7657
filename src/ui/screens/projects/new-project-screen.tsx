import { useSignal } from '@preact/signals'
import { useLocation, useParams } from 'wouter-preact'
import type { Pattern } from '../../../core/patterns/index.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Picker } from '../../parts/picker.tsx'
import { Screen } from '../../parts/screen.tsx'
import { beginProject } from '../../state/begin-project.ts'
import { draft } from '../../state/check-state.ts'
import { namedIn } from '../../state/in-address.ts'
import { allPatterns, patternById } from '../../state/patterns-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { patternName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'

/** What a new project makes: what the address names, or else what was checked for last. */
export function NewProjectScreen() {
  const [, go] = useLocation()
  const { pattern: named, ...making } = useParams()
  const chosen = useSignal(named ?? draft.peek().pattern)
  const pattern = patternById(chosen.value) ?? allPatterns()[0] ?? null
  if (!pattern) return <p class="loading soft">{words.shell.loading}</p>
  return (
    <Form
      key={pattern.id}
      pattern={pattern}
      usual={pattern.id === named ? namedOf(pattern, making) : lastOf(pattern)}
      onPattern={(id) => (chosen.value = id)}
      onBegin={(version, size) => go(`/projects/${beginProject(pattern, version, size)}`)}
    />
  )
}

/** What is chosen to begin with, where anything is. */
interface Usual {
  readonly size?: string | undefined
  readonly version?: string | undefined
}

function namedOf({ sizes, versions }: Pattern, named: Usual): Usual {
  const ids = versions.map(({ id }) => id)
  return { size: namedIn(named.size, sizes), version: namedIn(named.version, ids) }
}

function lastOf({ id }: Pattern): Usual {
  return draft.peek().pattern === id ? draft.peek() : {}
}

interface FormProps {
  readonly pattern: Pattern
  readonly usual: Usual
  readonly onPattern: (id: string) => void
  readonly onBegin: (version: string, size: string) => void
}

function Form({ pattern, usual, onPattern, onBegin }: FormProps) {
  const { sizes, versions } = pattern
  const size = useSignal(
    sizes.find((name) => name === usual.size) ?? sizes[Math.floor(sizes.length / 2)] ?? '',
  )
  const version = useSignal((versions.find(({ id }) => id === usual.version) ?? versions[0])?.id ?? '')
  return (
    <Screen
      title={projectWords.newTitle}
      back="/projects"
      foot={
        <div class="foot-row">
          <Button look="main" icon="plus" wide onPress={() => onBegin(version.value, size.value)}>
            {projectWords.beginThis}
          </Button>
        </div>
      }
    >
      <Picker
        id="project-pattern"
        label={projectWords.pattern}
        value={pattern.id}
        options={allPatterns().map((each) => ({ value: each.id, label: patternName(each) }))}
        onPick={onPattern}
      />
      {pattern.about && <p class="soft">{pattern.about}</p>}
      <Choice
        name="size"
        label={projectWords.sizeLabel}
        options={pattern.sizes.map((name) => ({ value: name, label: name }))}
        value={size.value}
        onChoose={(name) => (size.value = name)}
      />
      {pattern.versions.length > 1 && (
        <Choice
          name="version"
          label={projectWords.versionLabel}
          options={pattern.versions.map(({ id, name }) => ({ value: id, label: name }))}
          value={version.value}
          onChoose={(id) => (version.value = id)}
        />
      )}
    </Screen>
  )
}
