import { computed, signal } from '@preact/signals'
import type { ClothRole } from '../../core/base/terms.ts'
import { type Asked, askedOf, type DonorQuestion } from '../../core/planning/donors/asked.ts'
import { ranked } from '../../core/planning/donors/rank.ts'
import type { DonorRow } from '../../core/planning/donors/row.ts'
import { donorsTogether } from '../../core/planning/donors/together.ts'
import { uncutCopies } from '../../core/planning/project-question.ts'
import type { Project } from '../../core/stash/project.ts'
import { takenBeside } from '../../core/stash/taken.ts'
import type { DonorsAsked, GarmentNow, Jobs } from '../../workers/protocol.ts'
import { isAbort, PRIORITY, solvers } from './answers.ts'
import { clothRecords } from './cloth-state.ts'
import { lookThrough } from './donor-rows.ts'
import { garments } from './stash-state.ts'

/** The longest search for ways to share one role out. */
const SECONDS = 30

type Way = Jobs['blocking']['tells']

/** What was found for one role of a project. */
export interface RoleSearch {
  readonly role: ClothRole
  readonly question: DonorQuestion
  readonly asked: Asked
  /** By garment. */
  readonly rows: ReadonlyMap<string, DonorRow>
  /** Ways to take the role from several cloths. */
  readonly ways: readonly Way[]
  readonly state: 'running' | 'ended' | 'failed'
}

/** The search under way, or the last one. */
export const donorSearch = signal<readonly RoleSearch[]>([])

/** Best first. */
export function rankedRows({ rows, asked }: RoleSearch): readonly DonorRow[] {
  return ranked([...rows.values()], asked.area)
}

/** With several roles: a donor for each, no donor twice, best first. */
export const proposals = computed(() => {
  const roles = donorSearch.value.map(({ role, asked, rows }) => ({
    role,
    area: asked.area,
    rows: [...rows.values()],
  }))
  return roles.length < 2 ? [] : donorsTogether(roles, 3).filter(({ parts }) => parts.length > 1)
})

/** Looks through the stash for what is not cut yet of the roles, until the returned function is called. */
export function searchDonors(project: Project, roles: readonly ClothRole[]): () => void {
  const stop = new AbortController()
  const searches = roles.flatMap((role) => searchFor(project, role) ?? [])
  const from = onTheShelf(
    project,
    searches.flatMap(({ question }) => Object.keys(question.copies ?? {})),
  )
  donorSearch.value = searches
  for (const search of searches) void searchRole(search, project.blocked, from, stop.signal)
  return () => stop.abort()
}

/** null: all of the role is cut. */
function searchFor(project: Project, role: ClothRole): RoleSearch | null {
  const { pattern, version, size, clearance, colours } = project
  const copies = uncutCopies(project, [role], clothRecords.peek())
  if (copies === null) return null
  const question = { pattern, version, size, clearance, colours, roles: [role], copies }
  const asked = askedOf(question)
  return asked.ok ? { role, question, asked: asked.value, rows: new Map(), ways: [], state: 'running' } : null
}

/** Whatever the project has reserved of these pieces is laid anew; its other places stay, like those of others. */
function onTheShelf({ id }: Project, pieces: readonly string[]): readonly GarmentNow[] {
  const records = clothRecords.peek()
  return garments
    .peek()
    .filter(({ usedUp }) => !usedUp)
    .map((garment) => ({ garment, taken: takenBeside(garment.id, records, id, pieces) }))
}

async function searchRole(
  { role, question }: RoleSearch,
  blocked: readonly ClothRole[],
  from: readonly GarmentNow[],
  stop: AbortSignal,
): Promise<void> {
  try {
    await lookThrough({ question, from }, stop, (told) => {
      const rows = new Map(searchOf(role)?.rows)
      for (const row of told) rows.set(row.donor, row)
      change(role, stop, { rows })
    })
    if (blocked.includes(role)) await searchBlocked({ question, from }, role, stop)
    change(role, stop, { state: 'ended' })
  } catch (reason) {
    if (!isAbort(reason)) change(role, stop, { state: 'failed' })
  }
}

/** Only where no single cloth will do. */
async function searchBlocked(asks: DonorsAsked, role: ClothRole, stop: AbortSignal): Promise<void> {
  const rows = [...(searchOf(role)?.rows.values() ?? [])]
  if (rows.some(({ verdict }) => verdict === 'fits')) return
  const onProgress = (way: Way) => change(role, stop, { ways: [...(searchOf(role)?.ways ?? []), way] })
  const options = { seed: 1, seconds: SECONDS, priority: PRIORITY.outcomes, onProgress }
  await solvers.ask(stop, 'blocking', { ...asks, rows }, options)
}

function searchOf(role: ClothRole): RoleSearch | undefined {
  return donorSearch.peek().find((search) => search.role === role)
}

function change(role: ClothRole, stop: AbortSignal, part: Partial<RoleSearch>): void {
  if (stop.aborted) return
  donorSearch.value = donorSearch
    .peek()
    .map((search) => (search.role === role ? { ...search, ...part } : search))
}
