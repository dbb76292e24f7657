import type { Mm } from '../../../core/base/units.ts'
import { KIND_IDS } from '../../../core/garments/index.ts'
import type { CheckAnswer } from '../../../core/planning/check.ts'
import { roomAsked, standingOfFit } from '../../../core/planning/doubt.ts'
import type { Lay } from '../../../core/planning/lay.ts'
import type { LayProblem } from '../../../core/planning/lay-problem.ts'
import { writeLayFile } from '../../../readers/problem-file/lay-schema.ts'
import { Button, IconButton } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { fileName, handOver } from '../../state/hand-over.ts'
import { type Opened, searchOpenedLonger, stopOpened } from '../../state/opened-check.ts'
import { settings } from '../../state/settings-state.ts'
import { canSearchOnFrom, type LiveVerdict, type Sign } from '../../state/verdict.ts'
import { writeSmall } from '../../words/format.ts'
import { verdictWords } from '../../words/verdict-words.ts'
import { words } from '../../words/words.ts'
import { LaySection } from '../check/lay-section.tsx'
import '../check/verdict-screen.css'
import { iconOf, lookOf } from '../check/verdict-strip.tsx'
import { OpenedFigures } from './opened-figures.tsx'

type WithProblem = Extract<Opened, { readonly problem: LayProblem }>

/** An opened check: what it asks, and the answer as it stands. */
export function OpenedCheck({ opened }: { opened: WithProblem }) {
  const { problem } = opened
  const lies = opened.state === 'answered' && opened.lay.placements.length > 0
  return (
    <>
      <section>
        <h2>{problem.name.trim() || words.sharing.noName}</h2>
        <p class="soft">
          {words.sharing.contents(
            words.sharing.panelCount(problem.panels.length),
            words.sharing.pieceCount(problem.pieces.reduce((sum, { count }) => sum + count, 0)),
            problem.clearance === 0 ? words.sharing.noGap : writeSmall(problem.clearance, settings.value),
          )}
        </p>
      </section>
      <Sentence opened={opened} />
      {lies && <LaySection answer={answerOf(opened)} pattern={{ pieces: namesOf(problem) }} />}
      {opened.state === 'answered' && (
        <Button
          onPress={() => {
            const name = fileName(problem.name, words.sharing.layFileName)
            const text = `${JSON.stringify(writeLayFile(opened.lay))}\n`
            void handOver({ name: `${name}-${words.sharing.layFileName}`, text })
          }}
        >
          {words.sharing.save}
        </Button>
      )}
      <OpenedFigures problem={problem} withPanels={!lies} />
      <Cautions ids={['blades', 'unwashed']} />
    </>
  )
}

/** A file says its pieces' names as their ids. */
function namesOf({ pieces }: LayProblem): readonly { readonly id: string; readonly name: string }[] {
  return pieces.map(({ id }) => ({ id, name: id }))
}

function answerOf({ problem, lay }: Extract<Opened, { state: 'answered' }>): CheckAnswer {
  return { problem, lay, heads: 'up' }
}

function Sentence({ opened }: { opened: WithProblem }) {
  const verdict = verdictOf(opened)
  const { headline, detail } = verdictWords(verdict, settings.value, null)
  return (
    <section class={`verdict verdict-${lookOf(verdict)}`} aria-label={words.check.stepNames.verdict}>
      <div class="verdict-line" role="status">
        <Icon name={iconOf(verdict)} size={40} />
        <div class="grow">
          <p class="verdict-headline">{headline}</p>
          {detail && <p class="verdict-detail">{detail}</p>}
          {opened.state === 'answered' && <p class="verdict-detail">{words.sharing.asGiven}</p>}
        </div>
        {opened.state === 'answered' && opened.looking && (
          <IconButton icon="stop" label={words.verdict.stop} onPress={stopOpened} />
        )}
      </div>
      {opened.state === 'running' && (
        <>
          {opened.of > 0 && <progress class="verdict-progress" max={opened.of} value={opened.placed} />}
          <Button icon="stop" onPress={stopOpened}>
            {words.verdict.stop}
          </Button>
        </>
      )}
      {canSearchOnFrom(verdict) && <Button onPress={searchOpenedLonger}>{words.verdict.again}</Button>}
    </section>
  )
}

/** A file does not say which garment its panels come from, so the most that any of them asks is asked. */
function carefulRoom(tapeDoubt: Mm): Mm {
  return Math.max(...KIND_IDS.map((kind) => roomAsked({ kind, traits: {} }, tapeDoubt)))
}

function signOfFile(lay: Lay, room: Mm): Sign {
  if (lay.verdict === 'cannot') return 'cannot'
  if (lay.verdict === 'not-found') return 'open'
  return standingOfFit(lay, room) === 'fits-if-tape-right' ? 'doubt' : 'fits'
}

function verdictOf(opened: WithProblem): LiveVerdict {
  switch (opened.state) {
    case 'running':
      return { state: 'running', placed: opened.placed, of: opened.of }
    case 'stopped':
      return { state: 'stopped' }
    case 'failed':
      return { state: 'failed', what: null }
    case 'answered': {
      const room = carefulRoom(settings.value.tapeDoubt)
      const sign = signOfFile(opened.lay, room)
      return {
        state: 'answered',
        sign,
        answer: answerOf(opened),
        roomAsked: room,
        looking: opened.looking,
        odd: [],
        byUsual: false,
        ifStretch: null,
      }
    }
  }
}
