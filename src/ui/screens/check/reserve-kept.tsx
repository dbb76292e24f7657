import { useEffect } from 'preact/hooks'
import { useLocation } from 'wouter-preact'
import type { Garment } from '../../../core/garments/index.ts'
import type { Project } from '../../../core/stash/project.ts'
import { Button } from '../../parts/button.tsx'
import { newProject } from '../../state/begin-project.ts'
import { openCloth, reserveLay } from '../../state/cloth-state.ts'
import { keptLay } from '../../state/keep.ts'
import { openProjects, projects } from '../../state/projects-state.ts'
import { projectWords } from '../../words/en/projects.ts'

/** Reserves the garment just kept for what it was checked for: for a project of that, or a new one. */
export function ReserveKept({ garment }: { garment: Garment }) {
  const [, go] = useLocation()
  useEffect(() => {
    void openProjects()
    void openCloth()
  }, [])
  const lay = keptLay.value
  if (!lay || lay.question.garment.id !== garment.id) return null
  const { question, answer } = lay
  const { pattern, version, size } = question
  const making = projects.value.filter(
    (each) =>
      !each.finished && each.pattern.id === pattern.id && each.version === version && each.size === size,
  )
  const reserve = async (project: Project) => {
    const of = { project: project.id, garment: garment.id }
    const done = await reserveLay({ answer, question, of, project })
    if (!done) return
    keptLay.value = null
    go(`/projects/${project.id}`)
  }
  return (
    <section class="stack" aria-labelledby="reserve-kept">
      <h2 id="reserve-kept">{projectWords.reserveKept}</h2>
      <p class="field-hint">{projectWords.reserveKeptHint(projectWords.making(pattern.name, size))}</p>
      {making.map((project) => (
        <Button key={project.id} icon="projects" onPress={() => void reserve(project)}>
          {projectWords.reserveFor(project.name)}
        </Button>
      ))}
      <Button icon="plus" onPress={() => void reserve(newProject(pattern, version, size))}>
        {projectWords.reserveNew}
      </Button>
    </section>
  )
}
