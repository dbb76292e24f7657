import { useEffect } from 'preact/hooks'
import { Redirect, useLocation, useParams } from 'wouter-preact'
import type { Together } from '../../../core/planning/donors/together.ts'
import { projectRoles, rolesWithout } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import { Button } from '../../parts/button.tsx'
import { Screen } from '../../parts/screen.tsx'
import { clothOpen, clothRecords, openCloth } from '../../state/cloth-state.ts'
import {
  donorSearch,
  proposals,
  type RoleSearch,
  searchDonors,
  searchOn,
  stopDonors,
} from '../../state/donors.ts'
import { namedIn } from '../../state/in-address.ts'
import { openProjects, projectById, projectsOpen } from '../../state/projects-state.ts'
import { reserveTogether } from '../../state/reserve-together.ts'
import { garmentById, garments, openStash, stashOpen } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { stashWords } from '../../words/en/stash.ts'
import { garmentTitle } from '../../words/garment-words.ts'
import { roleName } from '../../words/project-words.ts'
import { words } from '../../words/words.ts'
import { RoleRows } from './donor-rows.tsx'
import './projects.css'
import { Refused } from './refused.tsx'

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
