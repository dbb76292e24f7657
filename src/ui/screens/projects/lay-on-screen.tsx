import { useEffect, useMemo } from 'preact/hooks'
import { Redirect, useLocation, useParams } from 'wouter-preact'
import type { Garment } from '../../../core/garments/index.ts'
import { projectQuestion } from '../../../core/planning/project-question.ts'
import { neededPieces, projectRoles } from '../../../core/stash/progress.ts'
import type { Project } from '../../../core/stash/project.ts'
import { Button } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { clothOpen, clothRecords, openCloth, reserveLay } from '../../state/cloth-state.ts'
import { namedIn } from '../../state/in-address.ts'
import { askLayOn, layOn } from '../../state/lay-on.ts'
import { openProjects, projectById, projectsOpen } from '../../state/projects-state.ts'
import { settings } from '../../state/settings-state.ts'
import { garmentById, openStash, stashOpen } from '../../state/stash-state.ts'
import { projectWords } from '../../words/en/projects.ts'
import { writeList } from '../../words/format.ts'
import { clothWords, garmentTitle } from '../../words/garment-words.ts'
import { roleName } from '../../words/project-words.ts'
import { verdictWords } from '../../words/verdict-words.ts'
import { words } from '../../words/words.ts'
import { LaySection } from '../check/lay-section.tsx'
import '../check/verdict-screen.css'
import { iconOf, lookOf } from '../check/verdict-strip.tsx'
import { Refused } from './refused.tsx'
import '../../parts/field.css'
import '../../parts/card.css'

/** One garment for one project: the verdict, the lay round what is promised to others, and the way to reserve it. */
export function LayOnScreen() {
  const { id = '', garment: garmentId = '', role } = useParams()
  useEffect(() => {
    void openProjects()
    void openStash()
    void openCloth()
  }, [])
  const [project, garment] = [projectById(id), garmentById(garmentId)]
  if (!projectsOpen.value || !stashOpen.value || !clothOpen.value)
    return <p class="loading soft">{words.shell.loading}</p>
  if (!project || !garment) return <Redirect to={`/projects/${id}`} />
  return <Shown project={project} garment={garment} role={namedIn(role, projectRoles(project)) ?? null} />
}

interface ShownProps {
  readonly project: Project
  readonly garment: Garment
  /** null: the roles that the project's reservation on this garment has. */
  readonly role: string | null
}

function Shown({ project, garment, role }: ShownProps) {
  const [, go] = useLocation()
  const records = clothRecords.value
  const before = records.reservations.find(
    (each) => each.project === project.id && each.garment === garment.id && servesRole(project, each, role),
  )
  const roles = role === null ? rolesIn(project, before?.pieces ?? []) : [role]
  const { stretchDoubt } = settings.value
  const question = useMemo(
    () => projectQuestion(project, garment, roles.length > 0 ? roles : null, records, stretchDoubt),
    [project, garment, records, stretchDoubt, roles.join('\n')],
  )
  useEffect(() => (question ? askLayOn(question) : undefined), [question])
  const verdict = layOn.value
  const fits = verdict.state === 'answered' && verdict.answer.lay.verdict === 'fits'
  const title = garmentTitle(garment)
  const moves = movesWords(project, garment, roles, before !== undefined)
  const reserve = async () => {
    if (verdict.state !== 'answered' || !question) return
    const of = { project: project.id, garment: garment.id }
    const done = await reserveLay({
      answer: verdict.answer,
      question,
      of,
      ...(before && { replaces: before.id }),
    })
    if (done) go(`/projects/${project.id}`)
  }
  return (
    <Screen
      title={projectWords.layTitle(title)}
      back={`/projects/${project.id}`}
      foot={
        <div class="foot-row">
          <Button look="main" icon="keep" wide disabled={!fits} onPress={() => void reserve()}>
            {projectWords.reserve}
          </Button>
        </div>
      }
    >
      <p>
        {projectWords.layOf(roles.map(roleName).join(', ') || project.name)}
        <span class="card-text">{clothWords(garment)}</span>
      </p>
      {moves && <p class="field-hint">{moves}</p>}
      <Refused />
      <Sentence project={project} />
      {verdict.state === 'answered' && <LaySection answer={verdict.answer} pattern={project.pattern} />}
      {!garment.washed && <Cautions ids={['unwashed']} />}
    </Screen>
  )
}

function Sentence({ project }: { project: Project }) {
  const verdict = layOn.value
  const { headline, detail } = verdictWords(verdict, settings.value, project.pattern)
  return (
    <section class={`verdict verdict-${lookOf(verdict)}`} aria-label={words.check.stepNames.verdict}>
      <div class="verdict-line" role="status">
        <Icon name={iconOf(verdict)} size={40} />
        <div class="grow">
          <p class="verdict-headline">{headline}</p>
          {detail && <p class="verdict-detail">{detail}</p>}
        </div>
      </div>
    </section>
  )
}

/** What becomes of the places that the roles have now. */
function movesWords(
  project: Project,
  garment: Garment,
  roles: readonly string[],
  isHere: boolean,
): string | null {
  const elsewhere = clothRecords.value.reservations.filter(
    (each) =>
      each.project === project.id &&
      each.garment !== garment.id &&
      roles.some((role) => servesRole(project, each, role)),
  )
  if (elsewhere.length > 0)
    return projectWords.moves(writeList(elsewhere.map((each) => garmentTitle(garmentById(each.garment)))))
  return isHere ? projectWords.laidAnew : null
}

type Pieces = readonly { readonly piece: string }[]

function rolesIn(project: Project, laid: Pieces): readonly string[] {
  const ids = new Set(laid.map(({ piece }) => piece))
  return [...new Set(neededPieces(project).flatMap(({ id, role }) => (ids.has(id) ? [role] : [])))]
}

function servesRole(project: Project, { pieces }: { readonly pieces: Pieces }, role: string | null): boolean {
  return role === null || rolesIn(project, pieces).includes(role)
}
