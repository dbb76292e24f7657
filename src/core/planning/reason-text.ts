import type { Mm } from '../base/units.ts'
import type { Reason } from './lay.ts'

/**
 * Why it cannot be done, in one sentence a sewist understands. `pieceName` turns an id into the name to show;
 * `writeLength` writes a length in the units of the reader.
 */
export function reasonText(
  { kind, pieces, figures }: Omit<Reason, 'text'>,
  pieceName: (id: string) => string,
  writeLength: (length: Mm) => string,
): string {
  const names = pieces.map(pieceName)
  const first = names[0] ?? ''
  switch (kind) {
    case 'stretch':
      return stretchText(first, figures)
    case 'surface':
      return `“${first}” cannot point its head up the pile in any of its turns.`
    case 'upright':
      return `“${first}” cannot show the print the right way up in any of its turns.`
    case 'cloth':
      return `No panel is of the cloth that “${first}” is cut from.`
    case 'area':
      return areaText(names, figures)
    case 'piece':
      return pieceText(first, figures, writeLength)
    case 'sit':
      return sitText(first, figures, writeLength)
    case 'shows':
      return showsText(first, figures, writeLength)
    case 'alike':
      return alikeText(names)
    case 'group':
      return groupText(names, figures, writeLength)
    default:
      return `There is no way to place ${listed(names)} together.`
  }
}

type Figures = Reason['figures']
type WriteLength = (length: Mm) => string

function stretchText(
  name: string,
  { needsAcross, needsAlong, mostAcross, mostAlong, doubt }: Figures,
): string {
  const needs = `“${name}” needs cloth that stretches ${percentBoth(needsAcross ?? 0, needsAlong ?? 0)}`
  if (mostAcross === undefined || mostAlong === undefined)
    return `${needs}, and no panel that it may lie on has had its stretch measured.`
  const most = `${needs}, and what there is stretches at most ${percentBoth(mostAcross, mostAlong)}`
  return doubt ? `${most}: too little even if your gauge is ${round(doubt)} points off.` : `${most}.`
}

function percentBoth(across: number, along: number): string {
  return `${round(across)} % across and ${round(along)} % along`
}

function areaText(names: readonly string[], { needed = 0, available = 0 }: Figures): string {
  const verb = names.length === 1 ? 'needs' : 'need'
  if (!(available > 0)) return `${listed(names)} ${verb} cloth where none of the panels has any.`
  const more = 100 * (needed / available - 1)
  const amount = more < 0.1 ? 'a hair' : `${more < 10 ? round(more) : Math.round(more)} %`
  return `${listed(names)} ${verb} ${amount} more cloth than there is where they can lie.`
}

function pieceText(
  name: string,
  { longest, room, along, across, run, width }: Figures,
  writeLength: WriteLength,
): string {
  const needs = along ?? across
  if (needs !== undefined && run !== undefined)
    return `“${name}” needs ${writeLength(needs)} ${along === undefined ? 'across' : 'along'} the grain; ${runText(run, width, writeLength)}.`
  if (longest !== undefined && room !== undefined)
    return `“${name}” is ${writeLength(longest)} long, and nowhere is there more than ${writeLength(room)} for it.`
  return `“${name}” fits on no panel by itself, in any turn it may take.`
}

/** How long a clear run there is. */
function runText(run: Mm, width: Mm | undefined, writeLength: WriteLength): string {
  const enough = width === undefined ? '' : ' that is wide enough'
  return `the longest clear run${enough} is ${writeLength(run)}`
}

function sitText(
  name: string,
  { edge = 0, seats = 0, aligned = 0, longest = 0 }: Figures,
  writeLength: WriteLength,
): string {
  if (seats === 0) return `“${name}” is to sit on a finished edge, and where it may lie there is none.`
  if (aligned === 0)
    return `“${name}” is to sit on a finished edge, and none runs the way that its grain allows.`
  if (edge > longest)
    return `“${name}” is to sit on a finished edge with ${writeLength(edge)}, and the longest that runs its way has ${writeLength(longest)}.`
  return `“${name}” is to sit on a finished edge, and on none of them is there room for it.`
}

function showsText(name: string, { within = 0, nearest, edge }: Figures, writeLength: WriteLength): string {
  if (edge !== undefined)
    return `“${name}” has no place where it sits on a finished edge and shows all of the print as it should.`
  if (nearest === undefined || nearest <= within)
    return `“${name}” has no place where it shows all of the print as it should.`
  return `“${name}” shows the print no nearer than ${writeLength(nearest)} to its place, and ${writeLength(within)} is the most it may be off.`
}

function alikeText(names: readonly string[]): string {
  if (names.length === 1)
    return `All copies of ${listed(names)} must lie the same way of the cloth, and whichever way that is, there is no room for them.`
  return `What is worn side by side must lie the same way of the cloth, and whichever way that is, ${listed(names)} find no room together.`
}

function groupText(
  names: readonly string[],
  { copies = 0, most, across, widest, along, longest }: Figures,
  writeLength: WriteLength,
): string {
  const what = names.length === 1 ? `${copies} of ${listed(names)}` : listed(names)
  if (most !== undefined && most > 0)
    return `At most ${most} of the ${copies} copies of ${listed(names)} find room together.`
  if (across !== undefined && widest !== undefined && along !== undefined && longest !== undefined)
    return `${names.length === 1 ? 'Two of ' : ''}${listed(names)} need ${writeLength(across)} side by side and ${writeLength(along)} one above the other; the panel is at most ${writeLength(widest)} wide and ${writeLength(longest)} long.`
  return `There is no way to place ${what} together.`
}

/** Figures for reading: at most one digit after the point. */
function round(value: number): number {
  return Math.round(value * 10) / 10
}

const MOST_NAMES = 6

/** “a”, “b” and “c”; of many only the first few. */
function listed(names: readonly string[]): string {
  const quoted = names.map((name) => `“${name}”`)
  if (quoted.length > MOST_NAMES)
    return `${quoted.slice(0, MOST_NAMES - 1).join(', ')} and ${quoted.length - MOST_NAMES + 1} other pieces`
  return quoted.length < 2 ? quoted.join('') : `${quoted.slice(0, -1).join(', ')} and ${quoted.at(-1)}`
}
