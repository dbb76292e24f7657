import { Link } from 'wouter-preact'
import { IconButton } from '../../parts/button.tsx'
import { Icon, type IconName } from '../../parts/icon.tsx'
import { live, stopLiveCheck } from '../../state/live-check.ts'
import { settings } from '../../state/settings-state.ts'
import type { LiveVerdict, Sign } from '../../state/verdict.ts'
import { stripWords } from '../../words/verdict-words.ts'
import { words } from '../../words/words.ts'
import './verdict-strip.css'

/** Sign and colour of each verdict; the word always stands beside them. */
export const SIGN_ICONS: Readonly<Record<Sign, IconName>> = {
  fits: 'fits',
  doubt: 'doubt',
  cannot: 'cannot',
  'cannot-if': 'doubt',
  open: 'open',
}

/** The verdict as it stands, in one line; tapping it opens the verdict. A screen reader hears it change. */
export function VerdictStrip() {
  const verdict = live.value
  const { headline, detail } = stripWords(verdict, settings.value)
  return (
    <div class={`strip strip-${lookOf(verdict)}`}>
      <Link href="/check/verdict" class="strip-link">
        <Icon name={iconOf(verdict)} />
        <span class="grow" role="status">
          <span class="strip-headline">{headline}</span>
          {detail && <span class="strip-detail">{detail}</span>}
        </span>
        <span class="unseen">{words.verdict.openIt}</span>
      </Link>
      {verdict.state === 'running' && (
        <IconButton icon="stop" label={words.verdict.stop} onPress={stopLiveCheck} />
      )}
    </div>
  )
}

export function lookOf(verdict: LiveVerdict): Sign | 'none' {
  return verdict.state === 'answered' ? verdict.sign : 'none'
}

export function iconOf(verdict: LiveVerdict): IconName {
  if (verdict.state === 'answered') return SIGN_ICONS[verdict.sign]
  return verdict.state === 'failed' ? 'care' : verdict.state === 'stopped' ? 'stop' : 'running'
}
