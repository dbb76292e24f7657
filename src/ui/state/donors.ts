import { computed, signal } from '@preact/signals'
import type { ClothRole } from '../../core/base/terms.ts'
import { type Asked, askedOf, type DonorQuestion } from '../../core/planning/donors/asked.ts'
import { rankedWays } from '../../core/planning/donors/blocking.ts'
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
import { settings } from './settings-state.ts'
import { garments } from './stash-state.ts'

/** The longest search for ways to share one role out. */
const SECONDS = 30

/** Of each kind of proposal so many are shown. */
const MOST_WAYS = 3

export type Way = Jobs['blocking']['tells']

/** What was found for one role of a project. */
export interface RoleSearch {
  readonly role: ClothRole
  readonly question: DonorQuestion
  readonly asked: Asked
  /** By garment. */
  readonly rows: ReadonlyMap<string, DonorRow>
  /** Ways to take the role from several cloths. */
  readonly ways: readonly Way[]
  readonly state: 'running' | 'stopped' | 'ended' | 'failed'
}

/** The search under way, or the last one. */
export const donorSearch = signal<readonly RoleSearch[]>([])

/** Best first. */
export function rankedRows({ rows, asked }: RoleSearch): readonly DonorRow[] {
  return ranked([...rows.values()], asked.area)
}

/** Ways to take it from several cloths that are worth showing, best first. */
export function bestWays({ ways, asked }: RoleSearch): readonly Way[] {
  return rankedWays(ways, asked.area).slice(0, MOST_WAYS)
}

/** With several roles: a donor for each, no donor twice, best first. */
export const proposals = computed(() => {
  const roles = donorSearch.value.map(({ role, asked, rows }) => ({
    role,
    area: asked.area,
    rows: [...rows.values()],
  }))
  return roles.length < 2 ? [] : donorsTogether(roles, MOST_WAYS).filter(({ parts }) => parts.length > 1)
})

/** What the search under way, or the last one, looks through. */
let search: {
  readonly blocked: readonly ClothRole[]
  readonly from: readonly GarmentNow[]
  readonly stop: AbortController
} | null = null

/** Looks through the stash for what is not cut yet of the roles, until the returned function is called. */
export function searchDonors(project: Project, roles: readonly ClothRole[]): () => void {
  const searches = roles.flatMap((role) => searchFor(project, role) ?? [])
  const from = onTheShelf(
    project,
    searches.flatMap(({ question }) => Object.keys(question.copies ?? {})),
  )
  donorSearch.value = searches
  search = { blocked: project.blocked, from, stop: new AbortController() }
  begin()
  return () => search?.stop.abort()
}

/** Ends the search; what was found stays. */
export function stopDonors(): void {
  search?.stop.abort()
  donorSearch.value = donorSearch
    .peek()
    .map((each) => (each.state === 'running' ? { ...each, state: 'stopped' } : each))
}

/** Goes on with what was not settled when she stopped, or when the search broke off. */
export function searchOn(): void {
  if (!search) return
  search = { ...search, stop: new AbortController() }
  donorSearch.value = donorSearch
    .peek()
    .map((each) => (each.state === 'ended' ? each : { ...each, ways: [], state: 'running' }))
  begin()
}

function begin(): void {
  if (!search) return
  const { blocked, from, stop } = search
  for (const each of donorSearch.peek())
    if (each.state === 'running') void searchRole(each, blocked, from, stop.signal)
}

function isOpen({ rows }: RoleSearch, { garment }: GarmentNow): boolean {
  const verdict = rows.get(garment.id)?.verdict
  return verdict === undefined || verdict === 'undecided'
}

/** null: all of the role is cut. */
function searchFor(project: Project, role: ClothRole): RoleSearch | null {
  const { pattern, version, size, clearance, colours } = project
  const copies = uncutCopies(project, [role], clothRecords.peek())
  if (copies === null) return null
  const { stretchDoubt } = settings.peek()
  const question = { pattern, version, size, clearance, stretchDoubt, colours, roles: [role], copies }
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
  before: RoleSearch,
  blocked: readonly ClothRole[],
  from: readonly GarmentNow[],
  stop: AbortSignal,
): Promise<void> {
  const { role, question } = before
  const open = from.filter((each) => isOpen(before, each))
  try {
    await lookThrough({ question, from: open }, stop, (told) => {
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
