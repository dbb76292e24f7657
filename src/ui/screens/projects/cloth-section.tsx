import { Link } from 'wouter-preact'
import type { ClothRole } from '../../../core/base/terms.ts'
import { neededPieces, projectProgress, projectRoles, rolesWithout } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import type { Reservation } from '../../../core/stash/reservation.ts'
import type { ReservationFault } from '../../../core/stash/reservation-faults.ts'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { brokenIn } from '../../state/broken-reservations.ts'
import { clothRecords, releaseReservation } from '../../state/cloth-state.ts'
import { projectById } from '../../state/projects-state.ts'
import { garmentById } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import { copiesInWords, faultWords, roleName } from '../../words/project-words.ts'
import { LookForButton } from './look-for-button.tsx'

/** Which cloth the project is cut from, role by role, and what has none yet. */
export function ClothSection({ project }: { project: Project }) {
  const roles = projectRoles(project)
  const without = rolesWithout(project, clothRecords.value)
  return (
    <section class="stack" aria-labelledby="project-cloth">
      <h2 id="project-cloth">{projectWords.cloth}</h2>
      {without.length > 1 && (
        <ButtonLink icon="stash" to={`/projects/${project.id}/cloth`}>
          {projectWords.findAll}
        </ButtonLink>
      )}
      {roles.map((role) => (
        <RoleCloth key={role} project={project} role={role} titled={roles.length > 1} />
      ))}
      <LookForButton project={project} roles={without} />
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
          role={role}
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
          {projectWords.find}
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
  readonly role: ClothRole
  /** Pieces of the role. */
  readonly count: number
}

/** Where pieces of a role are reserved, and what can be done about it: laid anew there, moved to other cloth, given up. */
function Reserved({ project, reservation, role, count }: ReservedProps) {
  const title = garmentTitle(garmentById(reservation.garment))
  const faults = brokenIn(reservation)
  const isShared = count < reservation.pieces.length
  const ofRole = encodeURIComponent(role)
  return (
    <div>
      <Link class="reserved-line" href={`/stash/${reservation.garment}`}>
        <Icon name={faults.length > 0 ? 'doubt' : 'tick'} size={20} />
        {projectWords.reservedOn(projectWords.pieces(count), title)}
      </Link>
      {faults.length > 0 && <Broken project={project} faults={faults} />}
      <div class="reserved-deeds">
        <ButtonLink look="quiet" to={`/projects/${project.id}/lay/${reservation.garment}/${ofRole}`}>
          {projectWords.layAnew}
        </ButtonLink>
        <ButtonLink look="quiet" to={`/projects/${project.id}/cloth/${ofRole}`}>
          {projectWords.move}
        </ButtonLink>
        <Button
          look="quiet"
          onPress={() => void releaseReservation(reservation, projectWords.released(title))}
        >
          {isShared ? projectWords.releaseAll : projectWords.release}
        </Button>
      </div>
    </div>
  )
}

function Broken({ project, faults }: { project: Project; faults: readonly ReservationFault[] }) {
  return (
    <div class="broken" role="status">
      <p>{projectWords.noLonger}</p>
      <ul>
        {faults.map((fault) => (
          <li key={`${fault.piece}#${fault.copy}`}>{faultWords(project, fault, nameOfProject)}</li>
        ))}
      </ul>
    </div>
  )
}
