import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { Button } from '../../parts/button.tsx'
import { Screen } from '../../parts/screen.tsx'
import { givenNow, lookFor, openLookFor, stopWork, workOut } from '../../state/look-for.ts'
import type { LookForList } from '../../state/look-for-list.ts'
import { settings } from '../../state/settings-state.ts'
import { lookForWords } from '../../words/en/look-for.ts'
import { writeNumber, writeSmall } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { AddSheet } from './add-sheet.tsx'
import { Among } from './among.tsx'
import './look-for.css'
import { ThingCard } from './thing-card.tsx'
import { WorkBar } from './work-bar.tsx'

/** What garments must measure at least for the things she wants to make: worked out at home, read in the shop. */
export function LookForScreen() {
  useEffect(() => void openLookFor(), [])
  const list = lookFor.value
  return list ? <Opened list={list} /> : <p class="loading soft">{words.shell.loading}</p>
}

function Opened({ list }: { list: LookForList }) {
  const adding = useSignal(false)
  const { things, kinds } = list
  const hangsOn = [...kinds, ...things.flatMap((thing) => [thing.id, givenNow(thing)])].join(' ')
  useEffect(() => {
    void workOut()
    return stopWork
  }, [hangsOn])
  return (
    <Screen
      title={words.shell.lookFor}
      back="/"
      foot={<Foot any={things.length > 0} onAdd={() => (adding.value = true)} />}
    >
      <div class="look-for">
        {things.length === 0 && <Empty />}
        <WorkBar list={list} />
        <ul class="look-for-things">
          {things.map((thing) => (
            <li key={thing.id}>
              <ThingCard thing={thing} kinds={kinds} />
            </li>
          ))}
        </ul>
        {things.length > 0 && <Notes />}
        <Among kinds={kinds} />
      </div>
      {adding.value && <AddSheet onClose={() => (adding.value = false)} />}
    </Screen>
  )
}

function Empty() {
  return (
    <section class="stack" aria-labelledby="look-for-empty">
      <h2 id="look-for-empty">{lookForWords.empty}</h2>
      <p>{lookForWords.intro}</p>
    </section>
  )
}

function Foot({ any, onAdd }: { any: boolean; onAdd: () => void }) {
  return (
    <div class="foot-row">
      {any && (
        <Button icon="print" onPress={() => print()}>
          {lookForWords.print}
        </Button>
      )}
      <Button look="main" icon="plus" wide onPress={onAdd}>
        {lookForWords.add}
      </Button>
    </div>
  )
}

/** What every figure takes for granted. */
function Notes() {
  const { tapeDoubt, stretchDoubt } = settings.value
  return (
    <section class="look-for-notes" aria-labelledby="look-for-notes">
      <h2 id="look-for-notes">{lookForWords.notes}</h2>
      <p>{lookForWords.usual}</p>
      <p>
        {tapeDoubt > 0 ? lookForWords.doubt(writeSmall(tapeDoubt, settings.value)) : lookForWords.noDoubt}
      </p>
      {stretchDoubt > 0 && <p>{lookForWords.stretchDoubt(writeNumber(stretchDoubt))}</p>}
    </section>
  )
}
