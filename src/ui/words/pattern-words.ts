import { fieldParts } from '../../core/base/field-path.ts'
import type { Fault } from '../../core/base/result.ts'
import type { Mm } from '../../core/base/units.ts'
import {
  type Pattern,
  type PatternPiece,
  type PieceShape,
  SEAM_TYPES,
  seamAllowance,
} from '../../core/patterns/index.ts'
import { stretchAsked } from '../state/check-draft.ts'
import { type Units, writeList, writeNumber, writePercent, writeSmall } from './format.ts'
import { meantWords } from './match-words.ts'
import { words } from './words.ts'

const texts = words.patterns

/** What a pattern or a piece is called while it has no name. */
export function patternName({ name }: Pattern): string {
  return name.trim() || texts.unnamed
}

export function pieceName(pattern: Pattern, piece: PatternPiece): string {
  return piece.name.trim() || texts.number(writeNumber(pattern.pieces.indexOf(piece) + 1))
}

export function roleName(role: string): string {
  return words.check.roleNames[role] ?? role
}

/** “2 ×, half of them turned over, Lining”: how a piece is cut. */
export function cutWords({ copies, mirror, role }: PatternPiece): string {
  const said = [texts.copies(writeNumber(copies))]
  if (mirror === 'pairs') said.push(texts.pairs)
  if (mirror === 'free') said.push(texts.eitherWay)
  if (role !== 'main') said.push(roleName(role))
  return said.join(', ')
}

/** What the cloth must do for a version, in sentences. */
export function needsWords(pattern: Pattern, version: string, units: Units): readonly string[] {
  const { across, along } = stretchAsked(pattern, version, [])
  const stretch =
    along > 0
      ? texts.needsStretch(writePercent(across), writePercent(along))
      : across > 0
        ? texts.needsAcross(writePercent(across))
        : texts.needsNothing
  const inVersion = pattern.versions.find(({ id }) => id === version)?.pieces ?? []
  const roles = new Set(pattern.pieces.filter(({ id }) => inVersion.includes(id)).map(({ role }) => role))
  const { cloths = [] } = pattern
  return [
    ...(cloths.length > 0 ? [texts.needsCloth(meantWords(cloths))] : []),
    stretch,
    ...(roles.size > 1 ? [texts.needsRoles(writeList([...roles].map(roleName)))] : []),
    ...(pattern.clearance > 0 ? [texts.needsGap(writeSmall(pattern.clearance, units))] : []),
  ]
}

/** What still stands between the pattern and a check, each thing once, naming the field. */
export function hintsOf(pattern: Pattern, faults: readonly Fault[]): readonly string[] {
  return [...new Set(faults.flatMap((fault) => hintOf(pattern, fault) ?? []))]
}

/** null: another hint says it already. */
function hintOf(pattern: Pattern, { field, message }: Fault): string | null {
  const { hint } = texts
  const [area, index, ...rest] = fieldParts(field)
  if (area === 'name') return hint.name
  if (area === 'pieces' && index === undefined) return hint.pieces
  if (area === 'versions') return versionHint(pattern, Number(index), rest[0])
  const piece = area === 'pieces' ? pattern.pieces[Number(index)] : undefined
  return piece ? pieceHint(pattern, piece, rest, message) : hint.other(field, message)
}

function versionHint(pattern: Pattern, at: number, part: unknown): string | null {
  if (pattern.pieces.length === 0) return null
  if (part === 'name') return texts.hint.versionName
  return texts.hint.version(pattern.versions[at]?.name ?? '')
}

function pieceHint(
  pattern: Pattern,
  piece: PatternPiece,
  [part, size, ...path]: readonly (string | number)[],
  message: string,
): string {
  const { hint } = texts
  const name = pieceName(pattern, piece)
  if (part === 'name') return hint.pieceName(name)
  if (part === 'copies' && piece.mirror === 'pairs') return hint.copies(name)
  if (part === 'role') return hint.role(name)
  if (part !== 'shapes') return hint.other(`${name}, ${part}`, message)
  const [figure] = path
  if (figure === undefined) return hint.shape(name, String(size))
  return figureHint(name, String(size), piece.shapes[size as string], String(figure), message)
}

function figureHint(
  name: string,
  size: string,
  shape: PieceShape | undefined,
  figure: string,
  message: string,
): string {
  const { hint, figures } = texts
  const label =
    figures[(shape?.form === 'strip' && figure === 'height' ? 'bandHeight' : figure) as keyof typeof figures]
  if (label === undefined) return hint.other(`${name}, ${size}, ${figure}`, message)
  const value = shape?.[figure as keyof PieceShape] as unknown
  return typeof value === 'number' && value > 0 ? hint.tooMuch(name, label) : hint.figure(name, size, label)
}

/** Allowances to choose from, each width once with all the seams that use it; her own system of units only. */
export function allowanceChoices(units: Units): readonly { readonly width: Mm; readonly label: string }[] {
  const others = units.units === 'cm' ? /-inch$/ : /^(woven|french|flat-felled)$/
  const types = SEAM_TYPES.filter(({ id }) => id !== 'none' && !others.test(id))
  const widths = [...new Set(types.map(({ id }) => seamAllowance(id)))].sort((a, b) => a - b)
  return widths.map((width) => {
    const uses = types.filter(({ id }) => seamAllowance(id) === width).map(({ id }) => texts.seams[id])
    return { width, label: texts.allowanceOf(writeSmall(width, units), uses.join(', ')) }
  })
}
