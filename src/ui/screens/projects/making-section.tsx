import { projectRoles } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import { Choice } from '../../parts/choice.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { changeProject } from '../../state/projects-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { roleName } from '../../words/project-words.ts'

/** Name, size, version, and what she wants of the cloth: folded away, as it is set once. What has cloth already stays as it is. */
export function MakingSection({ project, locked }: { project: Project; locked: boolean }) {
  const { id, name, pattern, size, version, colours, blocked } = project
  return (
    <details class="fold">
      <summary>{projectWords.change}</summary>
      <div class="stack">
        <TextField
          id="project-name"
          label={projectWords.name}
          value={name}
          onValue={(text) => changeProject(id, { name: text })}
        />
        {locked ? (
          <p class="field-hint">{projectWords.changeLocked}</p>
        ) : (
          <>
            <Choice
              name="size"
              label={projectWords.sizeLabel}
              options={pattern.sizes.map((name) => ({ value: name, label: name }))}
              value={size}
              onChoose={(value) => changeProject(id, { size: value })}
            />
            {pattern.versions.length > 1 && (
              <Choice
                name="version"
                label={projectWords.versionLabel}
                options={pattern.versions.map((each) => ({ value: each.id, label: each.name }))}
                value={version}
                onChoose={(value) => changeProject(id, { version: value })}
              />
            )}
          </>
        )}
        {projectRoles(project).map((role) => (
          <div key={role} class="stack">
            <TextField
              id={`colour-${role}`}
              label={projectWords.colours(roleName(role))}
              hint={projectWords.coloursHint}
              value={colours[role] ?? ''}
              onValue={(text) => changeProject(id, { colours: { ...colours, [role]: text } })}
            />
            <Tick
              label={projectWords.blocked(roleName(role))}
              hint={projectWords.blockedHint}
              checked={blocked.includes(role)}
              onChange={(on) =>
                changeProject(id, {
                  blocked: on ? [...blocked, role] : blocked.filter((other) => other !== role),
                })
              }
            />
          </div>
        ))}
      </div>
    </details>
  )
}
