import { useLocation } from 'wouter-preact'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { draft, pattern, tell } from '../../state/check-state.ts'
import { chooseMake } from '../../state/choose-make.ts'
import { allPatterns } from '../../state/patterns-state.ts'
import { words } from '../../words/words.ts'
import './start-screen.css'

/** Cautions that come with the verdict, when there is something to cut. */
const SAID_LATER = ['blades', 'unwashed']

/** What to make: pattern, version, size. */
export function MakeScreen() {
  const [, go] = useLocation()
  const chosen = pattern.value
  const { version, size, step, kind } = draft.value
  const others = allPatterns().filter(({ id }) => id !== chosen?.id)
  const done = () => go(kind && step ? `/check/${step}` : '/')
  return (
    <Screen
      title={words.check.whatToMake}
      back="/"
      foot={
        <div class="foot-row">
          <Button look="main" wide disabled={!chosen} onPress={done}>
            {words.check.useThis}
          </Button>
        </div>
      }
    >
      {chosen && (
        <section class="stack">
          <h2>{chosen.name}</h2>
          <Choice
            name="size"
            label={words.check.size}
            options={chosen.sizes.map((name) => ({ value: name, label: name }))}
            value={size}
            onChoose={(value) => tell({ size: value })}
          />
          {chosen.versions.length > 1 && (
            <Choice
              name="version"
              label={words.check.version}
              options={chosen.versions.map(({ id, name }) => ({ value: id, label: name }))}
              value={version}
              onChoose={(value) => tell({ version: value })}
            />
          )}
          <Cautions ids={chosen.cautions.filter((id) => !SAID_LATER.includes(id))} />
        </section>
      )}
      <section class="stack" aria-labelledby="all-patterns">
        <h2 id="all-patterns">{chosen ? words.check.another : words.check.chooseMake}</h2>
        {others.map((each) => (
          <button key={each.id} type="button" class="pattern-card" onClick={() => chooseMake(each)}>
            <span class="grow">
              <span class="pattern-name">{each.name}</span>
              <span class="pattern-about">{each.about}</span>
            </span>
          </button>
        ))}
      </section>
    </Screen>
  )
}
