import type { CutSheet, SheetPiece } from '../../../core/cut-sheet/cut-sheet.ts'
import type { Project } from '../../../core/stash/project.ts'
import type { LaidPiece } from '../../../core/stash/reservation.ts'
import { POINT_LETTERS } from '../../drawing/piece-on-sheet.tsx'
import { EDGE_LETTERS } from '../../drawing/sheet-drawing.tsx'
import { Tick } from '../../parts/tick.tsx'
import { settings } from '../../state/settings-state.ts'
import { cutSheetWords } from '../../words/en/cut-sheet.ts'
import { writeNumber, writeWithUnit } from '../../words/format.ts'

interface PieceLinesProps {
  readonly project: Project
  readonly sheet: CutSheet
  readonly isTicked: (laid: LaidPiece) => boolean
  readonly onTick: (laid: LaidPiece, on: boolean) => void
}

/** Piece by piece in the order of cutting: where it lies, which side is up, what to mark, and a tick once it is cut. */
export function PieceLines({ project, sheet, isTicked, onTick }: PieceLinesProps) {
  return (
    <ol class="piece-lines">
      {sheet.pieces.map((piece, k) => {
        const { laid } = piece
        const number = writeNumber(k + 1)
        return (
          <li key={`${laid.piece}#${laid.copy}`}>
            <Tick
              label={cutSheetWords.tick(number, copyName(project, laid))}
              hint={laid.mirrored ? cutSheetWords.turnedOver : cutSheetWords.asDrawn}
              checked={isTicked(laid)}
              onChange={(on) => onTick(laid, on)}
            />
            {piece.points && <Distances piece={piece} name={copyName(project, laid)} />}
            <Marks pieces={sheet.pieces} at={k} />
          </li>
        )
      })}
    </ol>
  )
}

function Distances({ piece, name }: { piece: SheetPiece; name: string }) {
  return (
    <table class="distances">
      <caption class="unseen">{cutSheetWords.caption(name)}</caption>
      <thead>
        <tr>
          <th scope="col">{cutSheetWords.point}</th>
          {EDGE_LETTERS.map((letter) => (
            <th key={letter} scope="col">
              {cutSheetWords.fromEdge(letter)}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {piece.points?.map((point, k) => (
          <tr key={POINT_LETTERS[k]}>
            <th scope="row">{POINT_LETTERS[k]}</th>
            {point.from.map((distance, edge) => (
              <td key={EDGE_LETTERS[edge]}>{writeWithUnit(Math.max(0, distance), settings.value)}</td>
            ))}
          </tr>
        ))}
        {piece.notches.map(({ at, count, edge, from }) => (
          <tr key={at.join(' ')} class="notch-row">
            <th scope="row">{cutSheetWords.notchAt[count](edge ?? cutSheetWords.edge)}</th>
            {from?.map((distance, k) => (
              <td key={EDGE_LETTERS[k]}>{writeWithUnit(Math.max(0, distance), settings.value)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

interface MarksProps {
  readonly pieces: readonly SheetPiece[]
  readonly at: number
}

/** Those of further copies of a piece are the same as those of its first. */
function Marks({ pieces, at }: MarksProps) {
  const piece = pieces[at]
  if (!piece) return null
  const said = marksInWords(piece)
  if (said.length === 0) return null
  const first = pieces.findIndex(({ laid }) => laid.piece === piece.laid.piece)
  return (
    <p class="piece-marks">
      {first < at ? cutSheetWords.marksAs(writeNumber(first + 1)) : cutSheetWords.marks(said)}
    </p>
  )
}

function marksInWords({ marks, notches }: SheetPiece): readonly string[] {
  const said = marks.map(({ kind, depth }) =>
    kind === 'hem' || kind === 'casing'
      ? cutSheetWords.mark[kind](writeWithUnit(depth, settings.value))
      : cutSheetWords.mark[kind],
  )
  const told = notches.map(({ count, edge }) => cutSheetWords.notch[count](edge ?? cutSheetWords.edge))
  return [...new Set([...said, ...told])]
}

/** What a copy is called: by its piece, and which of how many it is. */
export function copyName({ pattern }: Project, { piece, copy }: LaidPiece): string {
  const known = pattern.pieces.find(({ id }) => id === piece)
  if (!known) return piece
  return known.copies > 1
    ? cutSheetWords.copy(known.name, writeNumber(copy), writeNumber(known.copies))
    : known.name
}
