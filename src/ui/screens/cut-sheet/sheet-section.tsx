import { useId, useMemo } from 'preact/hooks'
import { type CutSheet, cutSheet, type SheetPiece } from '../../../core/cut-sheet/cut-sheet.ts'
import type { FreePanel } from '../../../core/stash/cloth-of.ts'
import type { Project } from '../../../core/stash/project.ts'
import type { LaidPiece, Reservation } from '../../../core/stash/reservation.ts'
import { ALONE, layScale } from '../../drawing/lay-drawing.tsx'
import { boxOf } from '../../drawing/paths.ts'
import { SheetDrawing } from '../../drawing/sheet-drawing.tsx'
import { Button } from '../../parts/button.tsx'
import { cutNow } from '../../state/cloth-state.ts'
import { isTicked, tick } from '../../state/cut-ticks.ts'
import { garmentById } from '../../state/stash-state.ts'
import { panelTitle } from '../../words/cloth-words.ts'
import { cutSheetWords } from '../../words/en/cut-sheet.ts'
import { writeNumber } from '../../words/format.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import { PieceLines } from './piece-lines.tsx'

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
  const sheet = useMemo(() => cutSheet(panel.outline, pieces, project), [panel, pieces, project])
  const others = panel.reserved.filter((place) => place.reservation !== reservation.id)
  const ticked = pieces.filter((piece) => isTicked(reservation.id, piece))
  const name = panelTitle(panel)
  const surface = garment?.cloth.surface === 'one-way' ? garment.cloth.pile : null
  const done = async () => {
    const order = { reservation: reservation.id, panel: panel.id, pieces: ticked }
    if (await cutNow(order, cutSheetWords.cut(name)))
      for (const piece of ticked) tick(reservation.id, piece, false)
  }
  return (
    <section class="cut-sheet stack" aria-labelledby={titleId}>
      <h2 id={titleId}>{cutSheetWords.panel(name, garmentTitle(garment))}</h2>
      <Drawings
        sheet={sheet}
        panel={panel}
        others={others.map(({ outline }) => outline)}
        isCut={({ laid }) => isTicked(reservation.id, laid)}
      />
      <p class="field-hint">
        {cutSheetWords.grain} {surface && cutSheetWords.pile[surface]}{' '}
        {others.length > 0 && cutSheetWords.others} {!sheet.edges && cutSheetWords.howNoEdges}{' '}
        {cutSheetWords.order}
      </p>
      <PieceLines
        project={project}
        sheet={sheet}
        isTicked={(laid) => isTicked(reservation.id, laid)}
        onTick={(laid, on) => tick(reservation.id, laid, on)}
      />
      {ticked.length > 0 && (
        <div class="unprinted stack">
          <Button look="main" icon="cut" wide onPress={() => void done()}>
            {cutSheetWords.done(ticked.length)}
          </Button>
          <p class="field-hint">{cutSheetWords.doneHint}</p>
        </div>
      )}
    </section>
  )
}

interface DrawingsProps {
  readonly sheet: CutSheet
  readonly panel: FreePanel
  readonly others: readonly FreePanel['outline'][]
  readonly isCut: (piece: SheetPiece) => boolean
}

/** CSS dots to a millimetre of paper. */
const DOTS_PER_MM = 96 / 25.4

/** What a drawing may take on A4 and on Letter alike, mm, margins and figures left room. */
const PAPER = { width: 165, height: 130 }

/** Scales that a ruler can be read by. */
const SCALES = [1, 2, 2.5, 3, 4, 5, 6, 8, 10, 12.5, 15, 20, 25]

/** For the screen as large as it goes; for paper at a scale with a name. */
function Drawings({ sheet, panel, others, isCut }: DrawingsProps) {
  const { minX, minY, maxX, maxY } = boxOf([sheet.outline])
  const shrink =
    SCALES.find((by) => (maxX - minX) / by <= PAPER.width && (maxY - minY) / by <= PAPER.height) ??
    (SCALES.at(-1) as number)
  const drawing = { sheet, flaws: panel.flaws, others, isCut }
  return (
    <>
      <div class="unprinted">
        <SheetDrawing {...drawing} scale={layScale([sheet.outline], ALONE)} />
      </div>
      <div class="printed-only">
        <SheetDrawing {...drawing} scale={DOTS_PER_MM / shrink} />
        <p>{cutSheetWords.scale(writeNumber(shrink))}</p>
      </div>
    </>
  )
}
