import { useLocation } from 'wouter-preact'
import type { ClothRole } from '../../../core/base/terms.ts'
import { projectRoles } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import { Button } from '../../parts/button.tsx'
import { addThing } from '../../state/look-for.ts'
import { patternById } from '../../state/patterns-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { thingDetail } from '../../words/look-for-words.ts'
import { patternName } from '../../words/pattern-words.ts'

/** Puts the roles that have no cloth on the list of what to look for; nothing if its pattern is no longer there to work it out from. */
export function LookForButton({ project, roles }: { project: Project; roles: readonly ClothRole[] }) {
  const [, go] = useLocation()
  const pattern = patternById(project.pattern.id)
  if (!pattern || roles.length === 0) return null
  const hasOneCloth = projectRoles(project).length === 1
  const add = async () => {
    // The last one put on the list stands first.
    for (const role of [...roles].reverse()) {
      const thing = {
        pattern: pattern.id,
        version: project.version,
        size: project.size,
        role: hasOneCloth ? null : role,
      }
      await addThing(thing, patternName(pattern), thingDetail(pattern, thing))
    }
    go('/look-for')
  }
  return (
    <Button icon="list" onPress={() => void add()}>
      {projectWords.lookFor}
    </Button>
  )
}
