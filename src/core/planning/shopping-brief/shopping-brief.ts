import { failed, ok, type Result } from '../../base/result.ts'
import type { Stretch } from '../../base/terms.ts'
import type { Mm, Percent } from '../../base/units.ts'
import { LABEL_SIZES, type LabelSize } from '../../garments/kind.ts'
import { kindOf } from '../../garments/kinds.ts'
import { startingMeasures } from '../../garments/starting.ts'
import { TELLING_MEASURES } from '../../garments/telling.ts'
import { piecesOf } from '../../patterns/pieces-of.ts'
import type { BriefQuestion, Enough, KindBrief } from './brief.ts'
import { type BriefControl, SEARCH_LOOKS, SHARES, shareOf } from './effort.ts'
import { type Asked, answerOn, leastRung } from './least-rung.ts'
import { leastStretch } from './least-stretch.ts'
import { byLength, byWidth, CLOTH_WIDTHS, clothRungs, garmentOf, longest } from './rungs.ts'
import { tooSmall } from './too-small.ts'

/** The other pair of figures is so much longer, and worth telling if it is so much narrower. */
const LONGER = 1.15
const NARROWER: Mm = 20

/**
 * What to look for among garments of one kind. Told as it becomes known; the last is the answer. Faults when the pattern has no such
 * version or size, or no piece of the roles asked.
 */
export function shoppingBrief(
  question: BriefQuestion,
  control: BriefControl,
  tell: (brief: KindBrief) => void = () => {},
): Result<KindBrief> {
  const pieces = piecesOf(question.pattern, question.version, question.size)
  if (!pieces.ok) return pieces
  const { roles } = question
  const wanted = pieces.value.map(({ piece }) => piece).filter(({ role }) => roles?.includes(role) ?? true)
  if (wanted.length === 0)
    return failed([{ field: 'roles', message: 'no piece of this version has the role asked' }])
  const stretch = leastStretch(wanted)
  const asked: Asked = { ...question, cloth: { stretch } }
  const before: KindBrief = {
    kind: question.kind,
    stretch: asShown(stretch, question.stretchDoubt ?? 0),
    enough: [],
    tooSmall: [],
    none: false,
    oneWay: false,
    label: null,
  }
  let last = before
  for (const brief of question.kind === 'cloth'
    ? clothBriefs(asked, before, control)
    : briefs(asked, before, control)) {
    last = brief
    tell(brief)
  }
  return ok(last)
}

/** What a gauge must show that may be off by the doubt; what need not stretch need not be measured. */
function asShown({ across, along }: Stretch, doubt: Percent): Stretch {
  const shown = (percent: Percent) => (percent > 0 ? percent + doubt : 0)
  return { across: shown(across), along: shown(along) }
}

/** A first figure, then finer ones, then what is beside it. */
function* briefs(asked: Asked, before: KindBrief, control: BriefControl): Generator<KindBrief, void> {
  const usual = byWidth(asked)
  const longer = byWidth(asked, longest(asked.kind))
  const first = shareOf(control, SHARES.width)
  const whole = leastRung(asked, usual, first) ?? leastRung(asked, longer, first)
  let brief: KindBrief = { ...before, enough: listed(whole) }
  if (whole) {
    yield brief
    const found = shortened(asked, whole, shareOf(control, SHARES.length))
    brief = { ...brief, enough: [found], ...beside(asked, found, shareOf(control, SHARES.beside)) }
    yield brief
  }
  const [found] = brief.enough
  const below = found ? usual.filter(({ width }) => width < found.width) : usual
  const proved = tooSmall(asked, below, shareOf(control, SHARES.proof))
  brief = { ...brief, tooSmall: listed(proved), none: !found && proved?.width === usual.at(-1)?.width }
  yield brief
  if (found) yield { ...brief, enough: [found, ...listed(narrower(asked, found, control))] }
}

/** One width after another. */
function* clothBriefs(asked: Asked, before: KindBrief, control: BriefControl): Generator<KindBrief, void> {
  let brief = before
  const widths = CLOTH_WIDTHS[asked.units]
  for (const [k, width] of widths.entries()) {
    const part = shareOf(control, 1 / (widths.length - k))
    const rungs = clothRungs(asked, width)
    const found = leastRung(asked, rungs, shareOf(part, SHARES.width))
    const below = found ? rungs.filter(({ length }) => length < found.length) : rungs
    const proved = tooSmall(asked, below, shareOf(part, SHARES.proof))
    const first = brief.enough.length === 0
    brief = {
      ...brief,
      enough: [...brief.enough, ...listed(found)],
      tooSmall: [...brief.tooSmall, ...listed(proved)],
      oneWay: first ? found !== null && servesOneWay(asked, found, part) : brief.oneWay,
    }
    yield brief
  }
}

function beside(asked: Asked, found: Enough, control: BriefControl): Pick<KindBrief, 'label' | 'oneWay'> {
  return { label: labelFrom(asked, found, control), oneWay: servesOneWay(asked, found, control) }
}

/** The same width, and no longer than need be. */
function shortened(asked: Asked, found: Enough, control: BriefControl): Enough {
  const { garment, width, length } = found
  const rungs = byLength(asked, { measures: garment.measures, width }, length).filter(
    (rung) => rung.length < length,
  )
  return leastRung(asked, rungs, control) ?? found
}

/** A longer garment that may be narrower, if it may be so much narrower that one would look for it. */
function narrower(asked: Asked, found: Enough, control: BriefControl): Enough | null {
  const usual = byWidth(asked).find(({ width }) => width === found.width)
  const length = Math.min(longest(asked.kind), Math.max(found.length, usual?.length ?? 0) * LONGER)
  const onTape = byLength(asked, { measures: found.garment.measures, width: found.width }, length).at(
    -1,
  )?.length
  if (onTape === undefined || onTape <= found.length) return null
  const rungs = byWidth(asked, onTape).filter(({ width }) => width <= found.width - NARROWER)
  return leastRung(asked, rungs, control)
}

/** As makers cut a size, at least as wide and long as found, and tried. */
function labelFrom(asked: Asked, { width, length, answer }: Enough, control: BriefControl): LabelSize | null {
  const kind = kindOf(asked.kind)
  for (const size of LABEL_SIZES) {
    const measures = startingMeasures(kind, size)
    const garment = garmentOf(asked.kind, { measures }, asked.cloth)
    const { width: across, length: along } = TELLING_MEASURES[asked.kind]
    if ((measures[across] ?? 0) < width || (measures[along] ?? 0) < length) continue
    if (answerOn(asked, garment, control, SEARCH_LOOKS, answer.lay.placements)) return size
  }
  return null
}

function servesOneWay(asked: Asked, { garment, answer }: Enough, control: BriefControl): boolean {
  const napped = { ...garment, cloth: { ...garment.cloth, surface: 'one-way' as const } }
  return answerOn(asked, napped, control, SEARCH_LOOKS, answer.lay.placements) !== null
}

function listed<T>(value: T | null): readonly T[] {
  return value === null ? [] : [value]
}
