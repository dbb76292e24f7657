import { useLocation } from 'wouter-preact'
import type { KindId } from '../../../core/garments/kind.ts'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Notice } from '../../parts/notice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { isUnderWay } from '../../state/check-draft.ts'
import { bringBack, draft, leftDraft, pattern, setAside, tell } from '../../state/check-state.ts'
import { words } from '../../words/words.ts'
import { KindPictures } from './kind-pictures.tsx'
import { MakeCard } from './make-card.tsx'
import { PatternCards } from './pattern-cards.tsx'
import './start-screen.css'
import { VerdictStrip } from './verdict-strip.tsx'

/** Where a check begins: what to make, and out of which kind of garment. */
export function StartScreen() {
  const [, go] = useLocation()
  const underWay = isUnderWay(draft.value)
  const begin = (kind: KindId) => {
    if (underWay && draft.value.kind !== kind) setAside()
    tell({ kind, step: 'measures' })
    go('/check/measures')
  }
  return (
    <Screen title={words.check.title}>
      {!underWay && leftDraft.value && <Left />}
      {underWay && <UnderWay />}
      {pattern.value ? <MakeCard pattern={pattern.value} draft={draft.value} /> : <PatternCards />}
      <section class="stack" aria-labelledby="from-title">
        <h2 id="from-title">{words.check.from}</h2>
        <KindPictures onPick={begin} />
      </section>
      <ButtonLink icon="list" to="/look-for">
        {words.shell.lookFor}
      </ButtonLink>
      <ButtonLink look="quiet" to="/open-check">
        {words.sharing.open}
      </ButtonLink>
    </Screen>
  )
}

/** The check that was left open, with its verdict as it stands. */
function UnderWay() {
  const { kind, step } = draft.value
  return (
    <section class="under-way stack" aria-labelledby="under-way-title">
      <h2 id="under-way-title">
        {words.check.underWay}: {kind && words.garments.kinds[kind]}
      </h2>
      <VerdictStrip />
      <div class="row">
        <Button look="quiet" onPress={setAside}>
          {words.check.startAnew}
        </Button>
        <span class="grow">
          <ButtonLink look="main" wide to={`/check/${step ?? 'measures'}`}>
            {words.check.carryOn}
          </ButtonLink>
        </span>
      </div>
    </section>
  )
}

function Left() {
  return (
    <Notice
      icon="leave"
      actions={
        <Button look="quiet" onPress={bringBack}>
          {words.check.bringBack}
        </Button>
      }
    >
      {leftDraft.value?.garment ? words.check.leftKept : words.check.left}
    </Notice>
  )
}
