import { useEffect } from 'preact/hooks'
import type { Project } from '../../../core/stash/project.ts'
import { PiecesSmall } from '../../drawing/pieces-drawing.tsx'
import { ButtonLink } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { Nothing } from '../../parts/nothing.tsx'
import { Screen } from '../../parts/screen.tsx'
import { clothOpen, clothRecords, openCloth } from '../../state/cloth-state.ts'
import { storeUnread } from '../../state/keeper.ts'
import { openProjects, projects, projectsOpen, unreadableProjects } from '../../state/projects-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { stageWords } from '../../words/project-words.ts'
import { words } from '../../words/words.ts'

/** Everything she makes or has made. */
export function ProjectsScreen() {
  useEffect(() => {
    void openProjects()
    void openCloth()
  }, [])
  if (!projectsOpen.value || !clothOpen.value) return <p class="loading soft">{words.shell.loading}</p>
  const underWay = projects.value.filter(({ finished }) => !finished)
  const finished = projects.value.filter((project) => project.finished)
  const unreadable = unreadableProjects.value.length
  return (
    <Screen title={projectWords.title}>
      {projects.value.length === 0 && (
        <Nothing title={projectWords.empty} how={projectWords.emptyHow} unread={storeUnread.value} />
      )}
      <ButtonLink look="main" icon="plus" to="/projects/new">
        {projectWords.begin}
      </ButtonLink>
      <Cards title={projectWords.underWay} list={underWay} />
      <Cards title={projectWords.finished} list={finished} />
      {unreadable > 0 && <p class="soft">{projectWords.unreadable(unreadable)}</p>}
    </Screen>
  )
}

function Cards({ title, list }: { title: string; list: readonly Project[] }) {
  if (list.length === 0) return null
  return (
    <section class="stack" aria-label={title}>
      <h2>{title}</h2>
      <ul class="stack">
        {list.map((project) => (
          <li key={project.id}>
            <CardLink
              to={`/projects/${project.id}`}
              title={project.name}
              picture={<PiecesSmall pattern={project.pattern} />}
            >
              <span class="card-text">{projectWords.making(project.pattern.name, project.size)}</span>
              <span class="card-text">{stageWords(project, clothRecords.value)}</span>
            </CardLink>
          </li>
        ))}
      </ul>
    </section>
  )
}
