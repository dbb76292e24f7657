import { useEffect, useState } from 'preact/hooks'
import { Redirect, useLocation, useParams } from 'wouter-preact'
import type { DonorRow } from '../../../core/planning/donors/row.ts'
import type { Together } from '../../../core/planning/donors/together.ts'
import { projectRoles, rolesWithout } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import { ClothSmall } from '../../drawing/cloth-small.tsx'
import { Button } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Screen } from '../../parts/screen.tsx'
import { clothNow } from '../../state/cloth-now.ts'
import { clothOpen, clothRecords, openCloth } from '../../state/cloth-state.ts'
import {
  bestWays,
  donorSearch,
  proposals,
  type RoleSearch,
  rankedRows,
  searchDonors,
  searchOn,
  stopDonors,
  type Way,
} from '../../state/donors.ts'
import { namedIn } from '../../state/in-address.ts'
import { openProjects, projectById, projectsOpen } from '../../state/projects-state.ts'
import { reserveBlocked, reserveTogether } from '../../state/reserve-together.ts'
import { garmentById, garments, openStash, stashOpen } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { stashWords } from '../../words/en/stash.ts'
import { writeList, writePrice } from '../../words/format.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import { roleName } from '../../words/project-words.ts'
import { words } from '../../words/words.ts'
import './projects.css'
import { Refused } from './refused.tsx'

/** Rows shown at first: of a role by itself, and of each of several. */
const FIRST_ROWS = { alone: 12, beside: 5 }

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
  const roles = role === undefined ? rolesToFind(project) : [namedIn(role, projectRoles(project)) ?? role]
  return <Found project={project} roles={roles} />
}

/** Those that have no cloth yet; once all have some, all of them, to be laid anew. */
function rolesToFind(project: Project): readonly string[] {
  const without = rolesWithout(project, clothRecords.peek())
  return without.length > 0 ? without : projectRoles(project)
}

function Found({ project, roles }: { project: Project; roles: readonly string[] }) {
  useEffect(() => searchDonors(project, roles), [project.id, roles.join('\n')])
  const searches = donorSearch.value
  return (
    <Screen title={texts.title(project.name)} back={`/projects/${project.id}`}>
      <p class="soft" role="status">
        {soFar(searches, garments.value.filter(({ usedUp }) => !usedUp).length)}
      </p>
      <StopOrGoOn searches={searches} />
      <Refused />
      <Proposals project={project} />
      {searches.map((search) => (
        <RoleRows key={search.role} project={project} search={search} titled={searches.length > 1} />
      ))}
    </Screen>
  )
}

function soFar(searches: readonly RoleSearch[], of: number): string {
  if (searches.some(({ state }) => state === 'failed')) return texts.failed
  if (searches.every(({ state }) => state === 'ended')) return texts.looked(of)
  const looked = Math.min(...searches.map(({ rows }) => rows.size))
  if (searches.some(({ state }) => state === 'stopped')) return texts.stopped(looked, of)
  return looked < of ? texts.looking(looked, of) : texts.longer(of)
}

function StopOrGoOn({ searches }: { searches: readonly RoleSearch[] }) {
  if (searches.some(({ state }) => state === 'running'))
    return (
      <Button icon="stop" onPress={stopDonors}>
        {words.verdict.stop}
      </Button>
    )
  if (searches.some(({ state }) => state !== 'ended'))
    return <Button onPress={searchOn}>{stashWords.wouldYield.lookOn}</Button>
  return null
}

function Proposals({ project }: { project: Project }) {
  const [, go] = useLocation()
  const shown = proposals.value
  if (shown.length === 0) return null
  const take = async (proposal: Together) => {
    if (await reserveTogether(project, proposal, donorSearch.peek())) go(`/projects/${project.id}`)
  }
  return (
    <section class="stack" aria-labelledby="together">
      <h2 id="together">{texts.together}</h2>
      <ul class="stack">
        {shown.map((proposal) => (
          <li key={proposal.parts.map(({ row }) => row.donor).join()} class="together stack">
            <dl>
              {proposal.parts.map(({ role, row }) => (
                <div key={role}>
                  <dt class="card-text card-inline">{texts.part(roleName(role))} </dt>
                  <dd class="card-inline">{garmentTitle(garmentById(row.donor))}</dd>
                </div>
              ))}
            </dl>
            <Button icon="keep" wide onPress={() => void take(proposal)}>
              {texts.takeTogether}
            </Button>
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
  const useless = rows.filter(({ verdict }) => verdict === 'cannot')
  const hopeful = rows.filter(({ verdict }) => verdict !== 'cannot')
  const [isAll, setAll] = useState(false)
  const shown = isAll ? hopeful : hopeful.slice(0, titled ? FIRST_ROWS.beside : FIRST_ROWS.alone)
  if (rows.length === 0) return null
  return (
    <section class="stack" aria-label={roleName(search.role)}>
      {titled && <h2>{roleName(search.role)}</h2>}
      {bestWays(search).map((way) => (
        <Blocked key={way.map(({ garment }) => garment).join()} project={project} search={search} way={way} />
      ))}
      <DonorCards project={project} search={search} rows={shown} />
      {hopeful.length > shown.length && (
        <Button onPress={() => setAll(true)}>{texts.more(hopeful.length - shown.length)}</Button>
      )}
      {useless.length > 0 && (
        <details class="useless">
          <summary>{texts.useless(useless.length)}</summary>
          <DonorCards project={project} search={search} rows={useless} />
        </details>
      )}
    </section>
  )
}

interface DonorCardsProps {
  readonly project: Project
  readonly search: RoleSearch
  readonly rows: readonly DonorRow[]
}

function DonorCards({ project, search, rows }: DonorCardsProps) {
  if (rows.length === 0) return null
  return (
    <ul class="stack">
      {rows.map((row) => (
        <li key={row.donor}>
          <DonorCard project={project} search={search} row={row} />
        </li>
      ))}
    </ul>
  )
}

interface BlockedProps {
  readonly project: Project
  readonly search: RoleSearch
  readonly way: Way
}

function Blocked({ project, search, way }: BlockedProps) {
  const [, go] = useLocation()
  const take = async () => {
    if (await reserveBlocked(project, way, search)) go(`/projects/${project.id}`)
  }
  return (
    <div class="together stack">
      <p>{texts.blocked(writeList(way.map(({ garment }) => garmentTitle(garmentById(garment)))))}</p>
      <Button icon="keep" wide onPress={() => void take()}>
        {texts.takeTogether}
      </Button>
    </div>
  )
}

const ICONS = { fits: 'fits', cannot: 'cannot', 'not-found': 'open', undecided: 'running' } as const

interface DonorCardProps {
  readonly project: Project
  readonly search: RoleSearch
  readonly row: DonorRow
}

function DonorCard({ project, search: { role, state }, row }: DonorCardProps) {
  const garment = garmentById(row.donor)
  if (!garment) return null
  // Nobody looks at it any longer.
  const verdict = row.verdict === 'undecided' && state !== 'running' ? 'not-found' : row.verdict
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
      <span class={`donor-verdict donor-${verdict}`}>
        <Icon name={ICONS[verdict]} size={20} />
        {texts.verdicts[verdict]}
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
    price === null ? '' : stashWords.cost(writePrice(price)),
  ]
    .filter((fact) => fact !== '')
    .join(' · ')
}
