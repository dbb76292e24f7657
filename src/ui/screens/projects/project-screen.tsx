import { useEffect } from 'preact/hooks'
import { useLocation, useParams } from 'wouter-preact'
import { projectStage } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { clothOpen, clothRecords, openCloth } from '../../state/cloth-state.ts'
import {
  changeProject,
  dropProject,
  openProjects,
  projectById,
  projectsOpen,
} from '../../state/projects-state.ts'
import { openStash, stashOpen } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { stageWords } from '../../words/project-words.ts'
import { words } from '../../words/words.ts'
import { ProjectNotions } from '../notions/project-notions.tsx'
import { ClothSection } from './cloth-section.tsx'
import { MakingSection } from './making-section.tsx'
import './projects.css'
import { SavingsSection } from './savings-section.tsx'
import '../../parts/card.css'

/** One project: what is made, of which cloth, what else it takes, what it saves. */
export function ProjectScreen() {
  const { id = '' } = useParams()
  useEffect(() => {
    void openProjects()
    void openStash()
    void openCloth()
  }, [])
  // Without the stash and what is reserved in it a project would seem to have no cloth.
  if (!projectsOpen.value || !stashOpen.value || !clothOpen.value)
    return <p class="loading soft">{words.shell.loading}</p>
  const project = projectById(id)
  if (project) return <Shown key={id} project={project} />
  return (
    <Screen title={projectWords.gone} back="/projects">
      <ButtonLink look="main" to="/projects">
        {projectWords.toAll}
      </ButtonLink>
    </Screen>
  )
}

function Shown({ project }: { project: Project }) {
  const { id, name, note, finished, pattern } = project
  const [, go] = useLocation()
  const stage = projectStage(project, clothRecords.value)
  const canCut = clothRecords.value.reservations.some((reservation) => reservation.project === id)
  return (
    <Screen
      title={name}
      back="/projects"
      foot={
        canCut && (
          <div class="foot-row">
            <ButtonLink look="main" icon="cut" wide to={`/projects/${id}/table`}>
              {projectWords.toTable}
            </ButtonLink>
          </div>
        )
      }
    >
      <p>
        {projectWords.making(pattern.name, project.size)}
        <span class="card-text">{stageWords(project, clothRecords.value)}</span>
      </p>
      <ClothSection project={project} />
      <ProjectNotions project={project} />
      <SavingsSection project={project} />
      <section class="stack" aria-label={projectWords.note}>
        <TextField
          id="project-note"
          label={projectWords.note}
          lines={2}
          value={note}
          onValue={(text) => changeProject(id, { note: text })}
        />
        <Tick
          label={projectWords.finishedBox}
          checked={finished}
          onChange={(done) => changeProject(id, { finished: done })}
        />
      </section>
      <MakingSection project={project} locked={stage !== 'planned'} />
      <Cautions ids={pattern.cautions} />
      <Button
        look="danger"
        icon="remove"
        onPress={() => {
          dropProject(project, projectWords.removed(name))
          go('/projects')
        }}
      >
        {projectWords.remove}
      </Button>
    </Screen>
  )
}
