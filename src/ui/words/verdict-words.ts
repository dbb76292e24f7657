import type { Stretch } from '../../core/base/terms.ts'
import type { Pattern } from '../../core/patterns/pattern.ts'
import { standingOfFit } from '../../core/planning/doubt.ts'
import type { Lay } from '../../core/planning/lay.ts'
import { reasonText } from '../../core/planning/reason-text.ts'
import type { Settings } from '../../storage/stores/settings.ts'
import { isRoomOpen, type LiveVerdict, type Missing } from '../state/verdict.ts'
import { together, writeList, writeNumber, writePercent, writeSmall, writeWithUnit } from './format.ts'
import { matchWords } from './match-words.ts'
import { stretchDoubtWords } from './stretch-words.ts'
import { words } from './words.ts'

export interface VerdictSentence {
  readonly headline: string
  readonly detail: string | null
}

type Answered = Extract<LiveVerdict, { state: 'answered' }>

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
  const rests = restsOn(verdict)
  const match = matchWords(verdict.answer.match)?.detail ?? null
  switch (verdict.sign) {
    case 'fits':
      return {
        headline: fitsWords(lay, settings),
        detail: joined(roomWords(verdict, settings), rests, match),
      }
    case 'doubt':
      return doubtSentence(verdict, settings, pattern)
    case 'cannot':
      return {
        headline: words.verdict.cannot,
        detail: joined(reasonWords(lay, settings, pattern), rests, match),
      }
    case 'cannot-if':
      return {
        headline: words.verdict.cannotIf,
        detail: joined(oddWords(verdict), reasonWords(lay, settings, pattern), rests, match),
      }
    case 'open':
      return {
        headline: words.verdict.open,
        detail: joined(words.verdict.openHint, oddWords(verdict), rests, match),
      }
  }
}

/** It fits, but hangs on what was measured: what on first, then the rest. */
function doubtSentence(verdict: Answered, settings: Settings, pattern: Pattern | null): VerdictSentence {
  const { answer, roomAsked } = verdict
  const stretch = stretchDoubtWords(answer, pattern)
  const tape = {
    headline: words.verdict.doubt(together(writeSmall(answer.lay.spare ?? 0, settings))),
    detail: words.verdict.doubtHint(writeSmall(roomAsked, settings)),
  }
  const match = matchWords(answer.match)
  const odd = oddWords(verdict)
  const oddFirst = odd === null ? null : { headline: words.verdict.fitsIf }
  const first = oddFirst ?? (match?.headline ? match : null) ?? stretch ?? tape
  const isTight = standingOfFit(answer.lay, roomAsked) === 'fits-if-tape-right'
  const besideTape = isTight ? `${tape.headline}. ${tape.detail}` : roomWords(verdict, settings)
  return {
    headline: first.headline ?? '',
    detail: joined(
      odd,
      restsOn(verdict),
      match?.detail ?? null,
      stretch && first !== stretch ? `${stretch.headline}. ${stretch.detail}` : (stretch?.detail ?? null),
      first === tape ? tape.detail : besideTape,
    ),
  }
}

function fitsWords(lay: Lay, settings: Settings): string {
  const { fits, fitsAtLeast, fitsBare } = words.verdict
  const spare = spareKnown(lay, settings)
  if (spare === null) return fitsBare
  return lay.spareIs === 'found' ? fits(together(spare)) : fitsAtLeast(together(spare))
}

/** What is to spare, in a few words; null while nothing is known of it, which is never written as 0. */
export function spareWords(lay: Lay, settings: Settings): string | null {
  const spare = spareKnown(lay, settings)
  if (spare === null) return null
  return lay.spareIs === 'found' ? words.verdict.fitsShort(spare) : words.verdict.atLeastShort(spare)
}

/** The same in the least room: “12 mm”, “at least 12 mm”. */
export function spareFigure(lay: Lay, settings: Settings): string | null {
  const spare = spareKnown(lay, settings)
  return spare === null || lay.spareIs === 'found' ? spare : words.verdict.atLeast(together(spare))
}

/** Less than the screen can show is not known to be any, unless it was found. */
function spareKnown({ spare, spareIs }: Lay, settings: Settings): string | null {
  if (spare === null) return null
  const written = writeSmall(spare, settings)
  return spareIs === 'at-least' && written === writeSmall(0, settings) ? null : written
}

/** That more to spare is looked for, or that the search was stopped before there was room enough. */
function roomWords(verdict: Answered, settings: Settings): string | null {
  const { lay } = verdict.answer
  // What is found needs no more looking, though the worker may not have said yet that it has ended.
  if (verdict.looking && lay.spareIs !== 'found')
    return spareKnown(lay, settings) === null ? words.verdict.looking : words.verdict.lookingOn
  return isRoomOpen(verdict) ? words.verdict.roomOpen(writeSmall(verdict.roomAsked, settings)) : null
}

/** Which figures to measure again because they are rare; null: none. */
function oddWords({ odd }: Answered): string | null {
  return odd.length === 0 ? null : words.verdict.odd(measureNames(odd), odd.length > 1)
}

function measureNames(ids: readonly string[]): string {
  return writeList(ids.map((id) => words.garments.measures[id]?.name ?? id))
}

/** Why it cannot be, with the pattern's names and her units. */
function reasonWords({ reason }: Lay, settings: Settings, pattern: Pattern | null): string | null {
  if (reason === null) return null
  const nameOf = (id: string) => pattern?.pieces.find((piece) => piece.id === id)?.name ?? id
  return reasonText(reason, nameOf, (mm) => writeWithUnit(mm, settings))
}

function answeredStrip(verdict: Answered, settings: Settings): VerdictSentence {
  const { lay } = verdict.answer
  const headline = words.verdict.words[verdict.sign]
  if (verdict.ifStretch) return { headline, detail: ifStretchWords(verdict.ifStretch) }
  if (verdict.odd.length > 0) return { headline, detail: words.verdict.oddShort(measureNames(verdict.odd)) }
  if (verdict.byUsual) return { headline, detail: words.verdict.byUsual }
  const stretch = stretchDoubtWords(verdict.answer, null)
  const match = verdict.answer.match
  if (verdict.sign === 'doubt' && match?.as === 'other') return { headline, detail: words.verdict.match.tag }
  if (verdict.sign === 'doubt' && stretch) return { headline, detail: stretch.short }
  if (verdict.sign === 'fits') {
    const unknown = verdict.looking ? words.verdict.lookingShort : words.verdict.roomOpenShort
    return { headline, detail: spareWords(lay, settings) ?? unknown }
  }
  if (verdict.sign === 'doubt')
    return { headline, detail: words.verdict.doubtShort(writeSmall(lay.spare ?? 0, settings)) }
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
