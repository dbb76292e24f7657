import type { Garment } from '../../../core/garments/index.ts'
import type { Cut } from '../../../core/stash/cut.ts'
import type { Reservation } from '../../../core/stash/reservation.ts'
import { CutAgain } from '../../../storage/cloth/refusals.ts'
import { Button } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { brokenIn } from '../../state/broken-reservations.ts'
import { clothRefusal, undoCut } from '../../state/cloth-state.ts'
import { projectById } from '../../state/projects-state.ts'
import { recordsOf } from '../../state/taken-now.ts'
import { projectWords } from '../../words/en/projects.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeDay } from '../../words/format.ts'
import { faultWords } from '../../words/project-words.ts'

/** What of the garment is promised to which project, and what was cut from it. */
export function Promises({ garment }: { garment: Garment }) {
  const { reservations: reserved, cuts } = recordsOf(garment)
  return (
    <>
      {reserved.length > 0 && (
        <section class="stack" aria-labelledby="promised">
          <h2 id="promised">{stashWords.promised}</h2>
          <ul class="stack">
            {reserved.map((reservation) => (
              <Promised key={reservation.id} reservation={reservation} />
            ))}
          </ul>
        </section>
      )}
      {cuts.length > 0 && (
        <section class="stack" aria-labelledby="cuts">
          <h2 id="cuts">{stashWords.cuts}</h2>
          <ul class="stack">
            {cuts.map((cut) => (
              <CutLine key={cut.id} cut={cut} />
            ))}
          </ul>
          {clothRefusal.value instanceof CutAgain && (
            <p class="field-error" role="alert">
              {stashWords.cutBackNot}
            </p>
          )}
        </section>
      )}
    </>
  )
}

function Promised({ reservation }: { reservation: Reservation }) {
  const project = projectById(reservation.project)
  const faults = brokenIn(reservation)
  return (
    <li>
      <CardLink to={`/projects/${reservation.project}`} title={projectName(reservation.project)}>
        <span class="card-text">{projectWords.pieces(reservation.pieces.length)}</span>
      </CardLink>
      {faults.length > 0 && (
        <div class="broken" role="status">
          <p>{projectWords.noLonger}</p>
          <ul>
            {project &&
              faults.map((fault) => (
                <li key={`${fault.piece}#${fault.copy}`}>{faultWords(project, fault, projectName)}</li>
              ))}
          </ul>
        </div>
      )}
    </li>
  )
}

function CutLine({ cut }: { cut: Cut }) {
  return (
    <li class="row">
      <span class="grow">
        {stashWords.cutFor(
          projectWords.pieces(cut.pieces.length),
          projectName(cut.project),
          writeDay(cut.at),
        )}
      </span>
      <Button look="quiet" onPress={() => void undoCut(cut.id)}>
        {stashWords.cutBack}
      </Button>
    </li>
  )
}

function projectName(id: string): string {
  return projectById(id)?.name ?? projectWords.another
}
