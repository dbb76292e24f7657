import { useSignal } from '@preact/signals'
import {
  isByLength,
  type Needed,
  type NotionCut,
  type NotionPlan,
  neededNotions,
  notionCautions,
  stillNeeded,
} from '../../../core/notions/index.ts'
import type { Project } from '../../../core/stash/project.ts'
import { Button } from '../../parts/button.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { cutForProject } from '../../state/notions-state.ts'
import { settings } from '../../state/settings-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { writeNumber } from '../../words/format.ts'
import { piecesWords } from '../../words/notion-words.ts'
import { isNeeded, NeedLine, PlanLists, useNotionPlan } from './needs-plan.tsx'

const texts = notionWords

/** What a project takes of notions: laid into the lengths owned, what is to be bought, and the way to cut it. */
export function ProjectNotions({ project }: { project: Project }) {
  const { pattern, version, size, taken } = project
  const all = neededNotions(pattern, version, size).filter(isNeeded)
  const left = stillNeeded(all, taken)
  const { plan, colours } = useNotionPlan(left)
  if (all.length === 0) return null
  const isAllTaken = left.every(
    ({ unknown, lengths, count }) => !unknown && lengths.length === 0 && count === 0,
  )
  return (
    <section class="stack" aria-labelledby="project-notions">
      <h2 id="project-notions">{texts.needs}</h2>
      <ul class="stack">
        {all.map((needed) => (
          <NeedLine
            key={needed.need.id}
            needed={needed}
            size={size}
            colours={colours}
            already={alreadyWords(needed, project)}
          />
        ))}
      </ul>
      <Cautions
        ids={notionCautions(
          all.map(({ need }) => need),
          pattern.cautions,
        )}
      />
      {isAllTaken ? <p role="status">{texts.allTaken}</p> : <PlanLists plan={plan} />}
      {plan.cuts.length > 0 && <CutThem project={project} plan={plan} />}
    </section>
  )
}

function CutThem({ project, plan }: { project: Project; plan: NotionPlan }) {
  const busy = useSignal(false)
  const changed = useSignal(false)
  const cut = async () => {
    busy.value = true
    changed.value = !(await cutForProject(project.id, plan.cuts, texts.taken))
    busy.value = false
  }
  const isLength = ({ takes }: NotionCut) =>
    takes.some(({ need }) => project.pattern.notions?.some(({ id, kind }) => id === need && isByLength(kind)))
  return (
    <>
      <Button look="main" wide disabled={busy.value} onPress={() => void cut()}>
        {plan.cuts.some(isLength) ? texts.cutThese : texts.takeThese}
      </Button>
      <p class="field-hint">{texts.cutHint}</p>
      {changed.value && (
        <p class="field-error" role="alert">
          {texts.changed}
        </p>
      )}
    </>
  )
}

function alreadyWords({ need }: Needed, { taken }: Project): string {
  const amounts = taken.filter((one) => one.need === need.id).map(({ amount }) => amount)
  if (amounts.length === 0) return ''
  if (isByLength(need.kind)) return piecesWords(amounts, settings.value)
  return writeNumber(amounts.reduce((sum, amount) => sum + amount, 0))
}
