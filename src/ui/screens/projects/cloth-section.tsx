import type { ClothRole } from '../../../core/base/terms.ts'
import { neededPieces, projectProgress, projectRoles } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import type { Reservation } from '../../../core/stash/reservation.ts'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { brokenIn } from '../../state/broken-reservations.ts'
import { clothRecords, releaseReservation } from '../../state/cloth-state.ts'
import { projectById } from '../../state/projects-state.ts'
import { garmentById } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import { copiesInWords, faultWords, roleName } from '../../words/project-words.ts'

/** Which cloth the project is cut from, role by role, and what has none yet. */
export function ClothSection({ project }: { project: Project }) {
  const roles = projectRoles(project)
  return (
    <section class="stack" aria-labelledby="project-cloth">
      <h2 id="project-cloth">{projectWords.cloth}</h2>
      {roles.length > 1 && (
        <ButtonLink icon="stash" to={`/projects/${project.id}/cloth`}>
          {projectWords.findAll}
        </ButtonLink>
      )}
      {roles.map((role) => (
        <RoleCloth key={role} project={project} role={role} titled={roles.length > 1} />
      ))}
    </section>
  )
}

interface RoleClothProps {
  readonly project: Project
  readonly role: ClothRole
  readonly titled: boolean
}

function RoleCloth({ project, role, titled }: RoleClothProps) {
  const records = clothRecords.value
  const copies = projectProgress(project, records).filter(({ piece }) => piece.role === role)
  const missing = copies.filter(({ state, piece }) => state === 'missing' && !piece.optional)
  const leftOut = copies.filter(({ state, piece }) => state === 'missing' && piece.optional)
  const isOfRole = ({ piece }: { readonly piece: string }) =>
    neededPieces(project).some(({ id, role: its }) => id === piece && its === role)
  const reserved = records.reservations.filter(
    (each) => each.project === project.id && each.pieces.some(isOfRole),
  )
  const cutFrom = new Map<string, number>()
  for (const { state, garment } of copies)
    if (state === 'cut' && garment !== null) cutFrom.set(garment, (cutFrom.get(garment) ?? 0) + 1)
  return (
    <div class="role-cloth stack">
      {titled && <h3>{roleName(role)}</h3>}
      {[...cutFrom].map(([garment, count]) => (
        <p key={garment}>
          {projectWords.cutFrom(projectWords.pieces(count), garmentTitle(garmentById(garment)))}
        </p>
      ))}
      {reserved.map((reservation) => (
        <Reserved
          key={reservation.id}
          project={project}
          reservation={reservation}
          count={reservation.pieces.filter(isOfRole).length}
        />
      ))}
      {missing.length > 0 && <p>{projectWords.missing(copiesInWords(missing))}</p>}
      {missing.length === 0 && leftOut.length > 0 && (
        <p class="soft">{projectWords.optionalMissing(copiesInWords(leftOut))}</p>
      )}
      {missing.length > 0 && (
        <ButtonLink
          look="plain"
          icon="stash"
          to={`/projects/${project.id}/cloth/${encodeURIComponent(role)}`}
        >
          {reserved.length > 0 ? projectWords.findMore : projectWords.find}
        </ButtonLink>
      )}
    </div>
  )
}

function nameOfProject(id: string): string {
  return projectById(id)?.name ?? projectWords.another
}

interface ReservedProps {
  readonly project: Project
  readonly reservation: Reservation
  readonly count: number
}

function Reserved({ project, reservation, count }: ReservedProps) {
  const title = garmentTitle(garmentById(reservation.garment))
  const faults = brokenIn(reservation)
  return (
    <div class="reserved">
      <p class="reserved-line">
        <Icon name={faults.length > 0 ? 'doubt' : 'tick'} size={20} />
        <a class="grow" href={`#/stash/${reservation.garment}`}>
          {projectWords.reservedOn(projectWords.pieces(count), title)}
        </a>
        <Button
          look="quiet"
          onPress={() => void releaseReservation(reservation, projectWords.released(title))}
        >
          {projectWords.release}
        </Button>
      </p>
      {faults.length > 0 && (
        <div class="broken" role="status">
          <p>{projectWords.noLonger}</p>
          <ul>
            {faults.map((fault) => (
              <li key={`${fault.piece}#${fault.copy}`}>{faultWords(project, fault, nameOfProject)}</li>
            ))}
          </ul>
          <ButtonLink to={`/projects/${project.id}/lay/${reservation.garment}`}>
            {projectWords.layAnew}
          </ButtonLink>
        </div>
      )}
    </div>
  )
}
