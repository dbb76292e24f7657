import { useId, useMemo } from 'preact/hooks'
import { cutSheet } from '../../../core/cut-sheet/cut-sheet.ts'
import type { FreePanel } from '../../../core/stash/cloth-of.ts'
import { onTheTable, type TablePanel } from '../../../core/stash/on-the-table.ts'
import type { Project } from '../../../core/stash/project.ts'
import type { LaidPiece, Reservation } from '../../../core/stash/reservation.ts'
import { layScale } from '../../drawing/lay-drawing.tsx'
import { boxOf } from '../../drawing/paths.ts'
import { SHEET_MARGIN, SheetDrawing, type SheetDrawingProps } from '../../drawing/sheet-drawing.tsx'
import { Button } from '../../parts/button.tsx'
import { cutNow } from '../../state/cloth-state.ts'
import { isTicked, tick } from '../../state/cut-ticks.ts'
import { settings } from '../../state/settings-state.ts'
import { garmentById } from '../../state/stash-state.ts'
import { panelTitle } from '../../words/cloth-words.ts'
import { cutSheetWords } from '../../words/en/cut-sheet.ts'
import { writeList, writeNumber, writeWithUnit } from '../../words/format.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import { copyName, PieceLines } from './piece-lines.tsx'
import '../../parts/field.css'

interface SheetSectionProps {
  readonly project: Project
  readonly reservation: Reservation
  readonly panel: FreePanel
  readonly pieces: readonly LaidPiece[]
}

/** One panel: the drawing, the figures, the ticks, and the noting of what is cut. On paper a page of its own. */
export function SheetSection({ project, reservation, panel, pieces }: SheetSectionProps) {
  const titleId = useId()
  const garment = garmentById(reservation.garment)
  const table = useMemo(() => garment && onTheTable(garment, panel), [garment, panel])
  const outline = table?.outline ?? panel.outline
  const sheet = useMemo(() => cutSheet(outline, pieces, project), [outline, pieces, project])
  const others = panel.reserved.filter((place) => place.reservation !== reservation.id)
  const ticked = pieces.filter((piece) => isTicked(reservation.id, piece))
  const name = panelTitle(panel)
  const pile = garment?.cloth.surface === 'one-way' ? garment.cloth.pile : null
  const hints = [
    ...(sheet.edges ? [] : [cutSheetWords.howNoEdges]),
    ...(pile ? [cutSheetWords.pile[pile]] : []),
    ...(pieces.some(({ mirrored }) => mirrored) ? [cutSheetWords.turnedKey] : []),
    ...(sheet.pieces.some(({ notches }) => notches.length > 0) ? [cutSheetWords.notchKey] : []),
    ...(others.length > 0 ? [cutSheetWords.others] : []),
  ]
  // Who cuts all without ticking says so in one tap.
  const done = ticked.length > 0 ? ticked : pieces
  const cut = async () => {
    const order = { reservation: reservation.id, panel: panel.id, pieces: done }
    if (await cutNow(order, cutSheetWords.cut(garmentTitle(garment))))
      for (const piece of ticked) tick(reservation.id, piece, false)
  }
  return (
    <section class="cut-sheet stack" aria-labelledby={titleId}>
      <p class="printed-only sheet-project">{cutSheetWords.of(project.name, project.size)}</p>
      <h2 id={titleId}>{cutSheetWords.panel(name, garmentTitle(garment))}</h2>
      <Drawings
        sheet={sheet}
        nameOf={({ laid }) => copyName(project, laid)}
        pile={pile}
        panel={panel}
        others={others.map(({ outline }) => outline)}
        isCut={({ laid }) => isTicked(reservation.id, laid)}
      />
      {table && <First table={table} />}
      {hints.length > 0 && <p class="field-hint">{hints.join(' ')}</p>}
      <PieceLines
        project={project}
        sheet={sheet}
        isTicked={(laid) => isTicked(reservation.id, laid)}
        onTick={(laid, on) => tick(reservation.id, laid, on)}
      />
      <div class="unprinted stack">
        <Button look={ticked.length > 0 ? 'main' : 'plain'} icon="cut" wide onPress={() => void cut()}>
          {ticked.length > 0 ? cutSheetWords.done(done.length) : cutSheetWords.allDone(done.length)}
        </Button>
        <p class="field-hint">{cutSheetWords.doneHint}</p>
      </div>
    </section>
  )
}

/** What comes before any measuring, so that the panel has the edges that are measured from. */
function First({ table: { takeOff, seamLines, hemsOn } }: { table: TablePanel }) {
  const strips = takeOff.map(({ along, width }) =>
    cutSheetWords.strip[along](writeWithUnit(width, settings.value)),
  )
  const said = [
    ...(strips.length > 0 ? [cutSheetWords.takeOff(writeList(strips))] : []),
    ...(seamLines ? [cutSheetWords.seamLines] : []),
    ...(hemsOn ? [cutSheetWords.hemsOn] : []),
  ]
  return said.length === 0 ? null : <p class="sheet-first">{said.join(' ')}</p>
}

interface DrawingsProps extends Pick<SheetDrawingProps, 'sheet' | 'isCut' | 'nameOf' | 'pile'> {
  readonly panel: FreePanel
  readonly others: readonly FreePanel['outline'][]
}

/** CSS dots to a millimetre of paper. */
const DOTS_PER_MM = 96 / 25.4

/** What a drawing may take on A4 and on Letter alike, mm, margins and figures left room. */
const PAPER = { width: 176, height: 165 }

/** On a small phone, without the drawing's margins. */
const SCREEN = { width: 326 - 2 * SHEET_MARGIN, height: 420 }

/** Scales that a ruler can be read by. */
const SCALES = [1, 2, 2.5, 3, 4, 5, 6, 8, 10, 12.5, 15, 20, 25]

/** For the screen as large as it goes; for paper at a scale with a name. */
function Drawings({ sheet, panel, others, ...rest }: DrawingsProps) {
  const { minX, minY, maxX, maxY } = boxOf([sheet.outline])
  const shrink =
    SCALES.find((by) => (maxX - minX) / by <= PAPER.width && (maxY - minY) / by <= PAPER.height) ??
    (SCALES.at(-1) as number)
  const drawing = { sheet, flaws: panel.flaws, others, ...rest }
  return (
    <>
      <div class="unprinted">
        <SheetDrawing {...drawing} scale={layScale([sheet.outline], SCREEN)} />
      </div>
      <div class="printed-only sheet-on-paper">
        <SheetDrawing {...drawing} scale={DOTS_PER_MM / shrink} />
        <p>{cutSheetWords.scale(writeNumber(shrink))}</p>
      </div>
    </>
  )
}
