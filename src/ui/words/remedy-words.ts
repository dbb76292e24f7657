import type { Pattern } from '../../core/patterns/pattern.ts'
import type { Remedy, RemedyStep } from '../../core/planning/remedies/remedy.ts'
import { stepsOf } from '../state/remedy-change.ts'
import { remedyWords } from './en/remedies.ts'
import { type Units, writeList, writeNumber, writePercent, writeSmall, writeWithUnit } from './format.ts'
import { roleName } from './pattern-words.ts'
import { words } from './words.ts'

const texts = remedyWords

/** What she would do, and what it costs her. */
export interface RemedySentence {
  readonly what: string
  readonly cost: string
}

/** A remedy in words. `pattern`: the one asked about, before the change. */
export function remedySentence(remedy: Remedy, pattern: Pattern, units: Units): RemedySentence {
  const said = stepsOf(remedy).map((step) => stepWords(step, pattern, units))
  const [first, second] = said
  if (!first) return { what: texts.asItIs, cost: texts.asItIsCost }
  return {
    what: second ? texts.both(first.what, second.what) : first.what,
    cost: said.map(({ cost }) => cost).join(' '),
  }
}

function stepWords(step: RemedyStep, pattern: Pattern, units: Units): RemedySentence {
  switch (step.kind) {
    case 'tilt':
    case 'quarter-turn':
    case 'against-pile':
      return turnWords(step, pattern)
    case 'narrower-seams':
    case 'narrower-hem':
      return narrowerWords(step, units)
    case 'own-hem':
      return ownHemWords(step, pattern, units)
    case 'unpick':
      return { what: texts.unpick, cost: texts.unpickCost(squareOf(step.gained, units)) }
    case 'mend-flaw':
    case 'take-off':
      return mendWords(step, units)
    case 'join':
      return joinWords(step, pattern, units)
    case 'other-garment':
      return otherGarmentWords(step, pattern, units)
    case 'other-version':
      return versionWords(step, pattern, units)
    case 'bias-cut':
      return biasWords(step, pattern)
    case 'larger-size':
      return largerWords(step)
    case 'smaller-size':
      return { what: texts.smallerSize(step.size), cost: texts.smallerSizeCost(step.down) }
  }
}

type Step<K extends RemedyStep['kind']> = Extract<RemedyStep, { kind: K }>

function turnWords(step: Step<'tilt'> | Step<'quarter-turn'> | Step<'against-pile'>, pattern: Pattern) {
  const pieces = piecesWords(step.pieces, pattern)
  if (step.kind === 'quarter-turn') return { what: texts.quarterTurn(pieces), cost: texts.quarterTurnCost }
  if (step.kind === 'against-pile') return { what: texts.againstPile(pieces), cost: texts.againstPileCost }
  const [from, to] = [writeNumber(step.from), writeNumber(step.to)]
  const what = step.from > 0 ? texts.tiltMore(pieces, to, from) : texts.tilt(pieces, to)
  return { what, cost: texts.tiltCost }
}

function ownHemWords(
  { pieces, saved, lowerEdge = [] }: Step<'own-hem'>,
  pattern: Pattern,
  units: Units,
): RemedySentence {
  const cost = texts.ownHemCost(writeSmall(saved, units, 'nearest'))
  return {
    what: texts.ownHem(piecesWords(pieces, pattern)),
    cost: lowerEdge.length === 0 ? cost : `${cost} ${texts.ownHemIf(piecesWords(lowerEdge, pattern))}`,
  }
}

function narrowerWords(
  { kind, from, to }: Step<'narrower-seams' | 'narrower-hem'>,
  units: Units,
): RemedySentence {
  const widths = [writeSmall(from, units, 'nearest'), writeSmall(to, units, 'nearest')] as const
  return kind === 'narrower-seams'
    ? { what: texts.narrowerSeams(...widths), cost: texts.narrowerSeamsCost }
    : { what: texts.narrowerHem(...widths), cost: texts.narrowerHemCost }
}

function mendWords(step: Step<'mend-flaw'> | Step<'take-off'>, units: Units): RemedySentence {
  if (step.kind === 'take-off') {
    const named = words.garments.traits[step.trait]?.name ?? step.trait
    return { what: texts.takeOff[step.trait] ?? texts.takeOffOther(named), cost: texts.takeOffCost }
  }
  const { flawKind, panel, area } = step
  const on = words.garments.panels[panel] ?? panel
  return {
    what: texts.mendFlaw(words.flaws.kinds[flawKind], on, squareOf(area, units)),
    cost: texts.mendFlawCost[flawKind],
  }
}

function joinWords(
  { piece, way, at, seam, allowance, copies }: Step<'join'>,
  pattern: Pattern,
  units: Units,
): RemedySentence {
  return {
    what: texts.join[way](piecesWords([piece], pattern), writeWithUnit(at, units)),
    cost: texts.joinCost(copies, writeWithUnit(seam, units), writeSmall(allowance, units, 'nearest')),
  }
}

function otherGarmentWords(
  { pieces, role, copies, area }: Step<'other-garment'>,
  pattern: Pattern,
  units: Units,
): RemedySentence {
  return {
    what: role === null ? texts.otherPiece(piecesWords(pieces, pattern)) : texts.otherRole(roleName(role)),
    cost: texts.otherGarmentCost(copies, squareOf(area, units)),
  }
}

function versionWords(
  { version, saved }: Step<'other-version'>,
  pattern: Pattern,
  units: Units,
): RemedySentence {
  const name = pattern.versions.find(({ id }) => id === version)?.name ?? version
  const cost = saved > 0 ? texts.otherVersionLess(squareOf(saved, units)) : texts.otherVersionMore
  return { what: texts.otherVersion(name), cost }
}

function biasWords({ pieces, needs }: Step<'bias-cut'>, pattern: Pattern): RemedySentence {
  return {
    what: texts.biasCut(piecesWords(pieces, pattern)),
    cost: texts.biasCutCost(writePercent(Math.ceil(needs))),
  }
}

function largerWords({ size, body, needs }: Step<'larger-size'>): RemedySentence {
  // What the pattern asks is rounded up, so that no cloth passes that gives less.
  const need = Math.ceil(Math.max(needs.across, needs.along))
  const cost = need > 0 ? texts.largerSizeCost(writePercent(need)) : texts.largerSizeLoose
  return { what: texts.largerSize(size, body), cost }
}

/** More names than these are no help. */
const MOST_NAMES = 3

function piecesWords(ids: readonly string[], pattern: Pattern): string {
  if (ids.length > MOST_NAMES) return texts.pieces(ids.length)
  const nameOf = (id: string) => pattern.pieces.find((piece) => piece.id === id)?.name ?? id
  return writeList(ids.map((id) => texts.quoted(nameOf(id))))
}

/** An area in mm² as a square, for nobody thinks of cloth in square centimetres. */
function squareOf(area: number, units: Units): string {
  return texts.square(writeWithUnit(Math.sqrt(area), units))
}
