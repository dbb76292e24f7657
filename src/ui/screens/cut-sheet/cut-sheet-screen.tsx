import { useEffect } from 'preact/hooks'
import { useParams } from 'wouter-preact'
import { clothOf, type FreePanel } from '../../../core/stash/cloth-of.ts'
import type { Project } from '../../../core/stash/project.ts'
import type { LaidPiece, Reservation } from '../../../core/stash/reservation.ts'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Cautions, Notice } from '../../parts/notice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { clothOpen, clothRecords, clothRefusal, openCloth } from '../../state/cloth-state.ts'
import { openCutTicks } from '../../state/cut-ticks.ts'
import { openProjects, projectById, projectsOpen } from '../../state/projects-state.ts'
import { garmentById, openStash, stashOpen } from '../../state/stash-state.ts'
import { cutSheetWords } from '../../words/en/cut-sheet.ts'
import { words } from '../../words/words.ts'
import './cut-sheet.css'
import { SheetSection } from './sheet-section.tsx'
import '../../parts/card.css'

/** What lies on the table: every panel with its lay to scale, where each piece goes, and what is cut already. */
export function CutSheetScreen() {
  const { id = '' } = useParams()
  useEffect(() => {
    void openProjects()
    void openStash()
    void openCloth()
    void openCutTicks()
    // What another screen was refused is no news here.
    clothRefusal.value = null
  }, [])
  if (!projectsOpen.value || !stashOpen.value || !clothOpen.value)
    return <p class="loading soft">{words.shell.loading}</p>
  const project = projectById(id)
  const sheets = project ? sheetsOf(project) : []
  return (
    <Screen
      title={cutSheetWords.title}
      back={`/projects/${id}`}
      foot={
        sheets.length > 0 && (
          <div class="foot-row">
            <Button look="main" icon="print" wide onPress={() => print()}>
              {cutSheetWords.print}
            </Button>
          </div>
        )
      }
    >
      {project && (
        <p>
          {cutSheetWords.of(project.name, project.size)}
          {sheets.length > 0 && (
            <span class="card-text">
              {cutSheetWords.how} {cutSheetWords.heads} {cutSheetWords.order}
            </span>
          )}
        </p>
      )}
      {clothRefusal.value && <Notice icon="doubt">{cutSheetWords.cutNot}</Notice>}
      {sheets.length === 0 && <Nothing id={id} />}
      {project &&
        sheets.map((sheet) => (
          <SheetSection key={`${sheet.reservation.id} ${sheet.panel.id}`} project={project} {...sheet} />
        ))}
      {project && sheets.length > 0 && (
        <Cautions ids={['blades', ...project.pattern.cautions.filter((each) => each !== 'blades')]} />
      )}
    </Screen>
  )
}

function Nothing({ id }: { id: string }) {
  const isCut = clothRecords.value.cuts.some(({ project }) => project === id)
  return (
    <>
      <p>{isCut ? cutSheetWords.allCut : cutSheetWords.nothing}</p>
      <ButtonLink look="main" to={`/projects/${id}`}>
        {cutSheetWords.toProject}
      </ButtonLink>
    </>
  )
}

interface PanelSheet {
  readonly reservation: Reservation
  readonly panel: FreePanel
  readonly pieces: readonly LaidPiece[]
}

/** One sheet a panel on which the project has pieces that are still to be cut. */
function sheetsOf(project: Project): readonly PanelSheet[] {
  const records = clothRecords.value
  const mine = records.reservations.filter((reservation) => reservation.project === project.id)
  return mine.flatMap((reservation) => {
    const garment = garmentById(reservation.garment)
    const panels = garment ? clothOf(garment, records).panels : []
    return panels.flatMap((panel) => {
      const pieces = reservation.pieces.filter((piece) => piece.panel === panel.id)
      return pieces.length > 0 ? [{ reservation, panel, pieces }] : []
    })
  })
}
