import type { Stretch } from '../../core/base/terms.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import type { Lay } from '../../core/planning/lay.ts'
import { reasonText } from '../../core/planning/reason-text.ts'
import type { Settings } from '../../storage/stores/settings.ts'
import type { LiveVerdict, Missing } from '../state/verdict.ts'
import { writeNumber, writePercent, writeSmall, writeWithUnit } from './format.ts'
import { matchWords } from './match-words.ts'
import { stretchDoubtWords } from './stretch-words.ts'
import { words } from './words.ts'

type Answered = Extract<LiveVerdict, { state: 'answered' }>

export interface VerdictSentence {
  readonly headline: string
  readonly detail: string | null
}

const MISSING: Readonly<Record<Missing, string>> = {
  pattern: words.verdict.missingPattern,
  measures: words.verdict.missingMeasures,
  stretch: words.verdict.missingStretch,
}

/** The verdict in a line or two, for the strip. */
export function stripWords(verdict: LiveVerdict, settings: Settings): VerdictSentence {
  if (verdict.state === 'answered') return answeredStrip(verdict, settings)
  return unansweredWords(verdict)
}

/** The verdict in a whole sentence, with what it rests on. */
export function verdictWords(
  verdict: LiveVerdict,
  settings: Settings,
  pattern: Pattern | null,
): VerdictSentence {
  if (verdict.state !== 'answered') return unansweredWords(verdict)
  const { lay } = verdict.answer
  const spare = lay.spare === null ? null : writeSmall(lay.spare, settings)
  const rests = restsOn(verdict)
  const match = matchWords(verdict.answer.match)?.detail ?? null
  switch (verdict.sign) {
    case 'fits':
      return {
        headline: spare === null ? words.verdict.fitsBare : words.verdict.fits(spare),
        detail: joined(rests, match),
      }
    case 'doubt':
      return doubtSentence(verdict, settings, pattern)
    case 'cannot':
      return {
        headline: words.verdict.cannot,
        detail: joined(reasonWords(lay, settings, pattern), rests, match),
      }
    case 'open':
      return { headline: words.verdict.open, detail: joined(words.verdict.openHint, rests, match) }
  }
}

/** It fits, but hangs on what was measured: what on first, then the rest. */
function doubtSentence(verdict: Answered, settings: Settings, pattern: Pattern | null): VerdictSentence {
  const { answer, roomAsked } = verdict
  const spare = answer.lay.spare ?? 0
  const stretch = stretchDoubtWords(answer, pattern)
  const tape = {
    headline: words.verdict.doubt(writeSmall(spare, settings)),
    detail: words.verdict.doubtHint(writeSmall(roomAsked, settings)),
  }
  const match = matchWords(answer.match)
  const first = (match?.headline ? match : null) ?? stretch ?? tape
  const besideTape = spare < roomAsked && first !== tape ? `${tape.headline}. ${tape.detail}` : null
  return {
    headline: first.headline ?? '',
    detail: joined(
      restsOn(verdict),
      match?.detail ?? null,
      stretch && first !== stretch ? `${stretch.headline}. ${stretch.detail}` : (stretch?.detail ?? null),
      first === tape ? tape.detail : besideTape,
    ),
  }
}

/** Why it cannot be, with the pattern's names and her units. */
function reasonWords({ reason }: Lay, settings: Settings, pattern: Pattern | null): string | null {
  if (reason === null) return null
  const nameOf = (id: string) => pattern?.pieces.find((piece) => piece.id === id)?.name ?? id
  return reasonText(reason, nameOf, (mm) => writeWithUnit(mm, settings))
}

function answeredStrip(verdict: Answered, settings: Settings): VerdictSentence {
  const { lay } = verdict.answer
  const spare = lay.spare === null ? null : writeSmall(lay.spare, settings)
  const headline = words.verdict.words[verdict.sign]
  if (verdict.ifStretch) return { headline, detail: ifStretchWords(verdict.ifStretch) }
  if (verdict.byUsual) return { headline, detail: words.verdict.byUsual }
  if (verdict.sign === 'fits' && spare !== null) return { headline, detail: words.verdict.fitsShort(spare) }
  const stretch = stretchDoubtWords(verdict.answer, null)
  const match = verdict.answer.match
  if (verdict.sign === 'doubt' && match?.as === 'other') return { headline, detail: words.verdict.match.tag }
  if (verdict.sign === 'doubt' && stretch) return { headline, detail: stretch.short }
  if (verdict.sign === 'doubt' && spare !== null) return { headline, detail: words.verdict.doubtShort(spare) }
  if (verdict.sign === 'open') return { headline, detail: words.verdict.leftOutShort(lay.leftOut.length) }
  return { headline, detail: words.verdict.whyShort[lay.reason?.kind ?? ''] ?? words.verdict.whyGroup }
}

function unansweredWords(verdict: Exclude<LiveVerdict, { state: 'answered' }>): VerdictSentence {
  const { words: names } = words.verdict
  switch (verdict.state) {
    case 'waiting':
      return { headline: names.waiting, detail: MISSING[verdict.missing] }
    case 'running':
      return {
        headline: names.running,
        detail: progressWords(verdict),
      }
    case 'stopped':
      return { headline: names.stopped, detail: null }
    case 'failed':
      return { headline: names.failed, detail: verdict.what ?? words.verdict.unable }
  }
}

function progressWords({ placed, of }: { readonly placed: number; readonly of: number }): string | null {
  if (of === 0) return null
  return placed === of ? words.verdict.placedAll : words.verdict.placed(writeNumber(placed), writeNumber(of))
}

/** What the verdict takes for granted. */
function restsOn({ byUsual, ifStretch }: Answered): string | null {
  return joined(ifStretch && `${ifStretchWords(ifStretch)}.`, byUsual ? words.verdict.byUsual : null)
}

/** What is taken for granted while stretch is needed and not told, without its full stop. */
export function ifStretchWords({ across, along }: Stretch): string {
  return along > 0
    ? words.verdict.ifStretchBoth(writePercent(across), writePercent(along))
    : words.verdict.ifStretch(writePercent(across))
}

function joined(...sentences: readonly (string | null)[]): string | null {
  const said = sentences.filter((sentence) => sentence !== null && sentence !== '')
  return said.length === 0 ? null : said.join(' ')
}
