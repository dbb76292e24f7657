import type { RefObject } from 'preact'
import { useRef } from 'preact/hooks'
import { Redirect, useLocation } from 'wouter-preact'
import { hangsOnGauge } from '../../../core/planning/remedies/short-of-stretch.ts'
import { Button, IconButton } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { garmentOf } from '../../state/check-draft.ts'
import { draft, kind, pattern, query, setAside } from '../../state/check-state.ts'
import { keepThis } from '../../state/keep.ts'
import { live, searchLonger, stopLiveCheck } from '../../state/live-check.ts'
import { settings } from '../../state/settings-state.ts'
import { canSearchOnFrom } from '../../state/verdict.ts'
import { ifStretchWords, verdictWords } from '../../words/verdict-words.ts'
import { words } from '../../words/words.ts'
import { ShareButton } from '../open-check/share-button.tsx'
import { LaySection } from './lay-section.tsx'
import { MeasureAgain } from './measure-again-section.tsx'
import { Remedies } from './remedies-section.tsx'
import { SizeTable } from './size-table-section.tsx'
import { StepFrame } from './step-frame.tsx'
import './verdict-screen.css'
import { iconOf, lookOf } from './verdict-strip.tsx'

/** Is it worth cutting? The answer, where each piece goes, every other size and version, and what to do now. */
export function VerdictScreen() {
  if (!kind.value) return <Redirect to="/" />
  const verdict = live.value
  const sentence = useRef<HTMLElement>(null)
  return (
    <StepFrame step="verdict" title={makingWords()} foot={<Decide />}>
      <Sentence box={sentence} />
      {verdict.state === 'answered' && pattern.value && (
        <LaySection answer={verdict.answer} pattern={pattern.value} />
      )}
      {/* Once the sheet is gone, which gives the focus back to a row that may be gone too. */}
      <Help onTaken={() => requestAnimationFrame(() => sentence.current?.focus())} />
      {pattern.value && <SizeTable pattern={pattern.value} />}
      {verdict.state === 'answered' && pattern.value && (
        <ShareButton title={makingWords()} answer={verdict.answer} pattern={pattern.value} />
      )}
      <Cautions ids={[...(pattern.value?.cautions ?? []), 'blades', 'unwashed']} />
    </StepFrame>
  )
}

function makingWords(): string {
  const making = pattern.value
  return making ? words.verdict.making(making.name, draft.value.size) : words.check.stepNames.verdict
}

/** What could still be done where it does not fit for sure. */
function Help({ onTaken }: { onTaken: () => void }) {
  const verdict = live.value
  const now = query.value
  if (verdict.state !== 'answered' || !now.ask || !pattern.value || verdict.sign === 'fits') return null
  // Every better lay would begin it anew.
  if (verdict.looking) return null
  const { tapeDoubt } = settings.value
  const asked = { question: now.question, answer: verdict.answer, doubt: tapeDoubt }
  const given = now.ifStretch && `${ifStretchWords(now.ifStretch)}:`
  return (
    <>
      {tapeDoubt > 0 && <MeasureAgain asked={asked} given={given} />}
      {(verdict.sign !== 'doubt' || hangsOnGauge(verdict.answer)) && (
        <Remedies asked={asked} pattern={pattern.value} given={given} onTaken={onTaken} />
      )}
    </>
  )
}

function Sentence({ box }: { box: RefObject<HTMLElement | null> }) {
  const verdict = live.value
  const { headline, detail } = verdictWords(verdict, settings.value, pattern.value)
  return (
    <section
      ref={box}
      tabIndex={-1}
      class={`verdict verdict-${lookOf(verdict)}`}
      aria-label={words.check.stepNames.verdict}
    >
      <div class="verdict-line" role="status">
        <Icon name={iconOf(verdict)} size={40} />
        <div class="grow">
          <p class="verdict-headline">{headline}</p>
          {detail && <p class="verdict-detail">{detail}</p>}
        </div>
        {verdict.state === 'answered' && verdict.looking && (
          <IconButton icon="stop" label={words.verdict.stop} onPress={stopLiveCheck} />
        )}
      </div>
      {verdict.state === 'running' && (
        <>
          {verdict.of > 0 && <progress class="verdict-progress" max={verdict.of} value={verdict.placed} />}
          <Button icon="stop" onPress={stopLiveCheck}>
            {words.verdict.stop}
          </Button>
        </>
      )}
      {canSearchOnFrom(verdict) && <Button onPress={searchLonger}>{words.verdict.again}</Button>}
    </section>
  )
}

/** Keep it or walk away: one tap each. */
function Decide() {
  const [, go] = useLocation()
  const garmentKind = kind.value
  const again = draft.value.garment
  const known = garmentKind !== null && garmentOf(draft.value, garmentKind, null) !== null
  const keep = async () => {
    if (garmentKind && (await keepThis(words.garments.kinds[garmentKind.id]))) go('/check/kept')
  }
  return (
    <div class="foot-row">
      <Button
        icon="leave"
        wide
        onPress={() => {
          setAside()
          go(again === null ? '/' : `/stash/${again}`)
        }}
      >
        {again === null ? words.check.leave : words.check.leaveKept}
      </Button>
      <Button look="main" icon="keep" wide disabled={!known} onPress={() => void keep()}>
        {again === null ? words.check.keep : words.check.keepChanges}
      </Button>
    </div>
  )
}
