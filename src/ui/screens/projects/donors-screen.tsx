import { useEffect } from 'preact/hooks'
import { Redirect, useLocation, useParams } from 'wouter-preact'
import type { DonorRow } from '../../../core/planning/donors/row.ts'
import type { Together } from '../../../core/planning/donors/together.ts'
import { projectRoles } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import type { Jobs } from '../../../workers/protocol.ts'
import { ClothSmall } from '../../drawing/cloth-small.tsx'
import { Button } from '../../parts/button.tsx'
import { CardButton, CardLink } from '../../parts/card.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Screen } from '../../parts/screen.tsx'
import { clothNow } from '../../state/cloth-now.ts'
import { clothOpen, openCloth } from '../../state/cloth-state.ts'
import { donorSearch, proposals, type RoleSearch, rankedRows, searchDonors } from '../../state/donors.ts'
import { openProjects, projectById, projectsOpen } from '../../state/projects-state.ts'
import { reserveBlocked, reserveTogether } from '../../state/reserve-together.ts'
import { garmentById, garments, openStash, stashOpen } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeList, writeNumber } from '../../words/format.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import { roleName } from '../../words/project-words.ts'
import { words } from '../../words/words.ts'

/** Rows shown of each role: further down nothing is worth a tap. */
const MOST_ROWS = 30

const texts = projectWords.donors

/** Cloth for a project from the whole stash, best first, as it is found. Of one role, or of all of them with `role` left out. */
export function DonorsScreen() {
  const { id = '', role } = useParams()
  useEffect(() => {
    void openProjects()
    void openStash()
    void openCloth()
  }, [])
  const project = projectById(id)
  if (!projectsOpen.value || !stashOpen.value || !clothOpen.value)
    return <p class="loading soft">{words.shell.loading}</p>
  if (!project) return <Redirect to="/projects" />
  const roles = role === undefined ? projectRoles(project) : [decodeURIComponent(role)]
  return <Found project={project} roles={roles} />
}

function Found({ project, roles }: { project: Project; roles: readonly string[] }) {
  useEffect(() => searchDonors(project, roles), [project.id, roles.join('\n')])
  const searches = donorSearch.value
  return (
    <Screen title={texts.title(project.name)} back={`/projects/${project.id}`}>
      <p class="soft" role="status">
        {searches.some(({ state }) => state === 'running')
          ? texts.looking(looked(searches), garments.value.length)
          : searches.some(({ state }) => state === 'failed')
            ? texts.failed
            : texts.looked(garments.value.length)}
      </p>
      <Proposals project={project} />
      {searches.map((search) => (
        <RoleRows key={search.role} project={project} search={search} titled={searches.length > 1} />
      ))}
    </Screen>
  )
}

function looked(searches: readonly RoleSearch[]): number {
  return Math.min(...searches.map(({ rows }) => rows.size))
}

function Proposals({ project }: { project: Project }) {
  const [, go] = useLocation()
  const shown = proposals.value
  if (shown.length === 0) return null
  const take = async (proposal: Together) => {
    await reserveTogether(project, proposal)
    go(`/projects/${project.id}`)
  }
  return (
    <section class="stack" aria-labelledby="together">
      <h2 id="together">{texts.together}</h2>
      <ul class="stack">
        {shown.map((proposal) => (
          <li key={proposal.parts.map(({ row }) => row.donor).join()}>
            <CardButton
              title={writeList(proposal.parts.map(({ row }) => garmentTitle(garmentById(row.donor))))}
              onPress={() => void take(proposal)}
            >
              <span class="card-text">
                {proposal.parts
                  .map(({ role, row }) => texts.part(roleName(role), garmentTitle(garmentById(row.donor))))
                  .join('; ')}
              </span>
              <span class="card-text">{texts.takeTogether}</span>
            </CardButton>
          </li>
        ))}
      </ul>
    </section>
  )
}

interface RoleRowsProps {
  readonly project: Project
  readonly search: RoleSearch
  readonly titled: boolean
}

function RoleRows({ project, search, titled }: RoleRowsProps) {
  const rows = rankedRows(search)
  const shown = rows.slice(0, MOST_ROWS)
  return (
    <section class="stack" aria-label={roleName(search.role)}>
      {titled && <h2>{roleName(search.role)}</h2>}
      {search.ways.map((way) => (
        <Blocked key={way.map(({ garment }) => garment).join()} project={project} way={way} />
      ))}
      <ul class="stack">
        {shown.map((row) => (
          <li key={row.donor}>
            <DonorCard project={project} role={search.role} row={row} />
          </li>
        ))}
      </ul>
      {rows.length > shown.length && <p class="soft">{texts.others(rows.length - shown.length)}</p>}
    </section>
  )
}

function Blocked({ project, way }: { project: Project; way: Jobs['blocking']['tells'] }) {
  const [, go] = useLocation()
  const take = async () => {
    await reserveBlocked(project, way)
    go(`/projects/${project.id}`)
  }
  return (
    <div class="stack">
      <p>{texts.blocked(writeList(way.map(({ garment }) => garmentTitle(garmentById(garment)))))}</p>
      <Button look="main" onPress={() => void take()}>
        {texts.takeBlocked}
      </Button>
    </div>
  )
}

const ICONS = { fits: 'fits', cannot: 'cannot', 'not-found': 'open', undecided: 'running' } as const

function DonorCard({ project, role, row }: { project: Project; role: string; row: DonorRow }) {
  const garment = garmentById(row.donor)
  if (!garment) return null
  return (
    <CardLink
      to={`/projects/${project.id}/lay/${garment.id}/${encodeURIComponent(role)}`}
      title={garmentTitle(garment)}
      picture={
        <span class="garment-small">
          <ClothSmall cloth={clothNow(garment)} />
        </span>
      }
    >
      <span class={`donor-verdict donor-${row.verdict}`}>
        <Icon name={ICONS[row.verdict]} size={20} />
        {texts.verdicts[row.verdict]}
      </span>
      <span class="card-text">{factsOf(row, garment.cloth.colour)}</span>
    </CardLink>
  )
}

function factsOf({ verdict, waste, price, missing }: DonorRow, colour: string): string {
  return [
    colour,
    verdict === 'fits' ? texts.waste((waste / 1e6).toFixed(2)) : '',
    verdict === 'not-found' ? texts.missing(`${Math.round(missing * 100)} ${words.parts.percent}`) : '',
    price === null ? '' : stashWords.cost(writeNumber(price)),
  ]
    .filter((fact) => fact !== '')
    .join(' · ')
}
