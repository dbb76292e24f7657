import { computed, signal } from '@preact/signals'
import type { ClothRole } from '../../core/base/terms.ts'
import { askedOf } from '../../core/planning/donors/asked.ts'
import { ranked } from '../../core/planning/donors/rank.ts'
import type { DonorRow } from '../../core/planning/donors/row.ts'
import { donorsTogether } from '../../core/planning/donors/together.ts'
import type { Project } from '../../core/stash/project.ts'
import { takenOf } from '../../core/stash/taken.ts'
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
  /** Of the role's pieces, mm². */
  readonly area: number
  /** By garment. */
  readonly rows: ReadonlyMap<string, DonorRow>
  /** Ways to take the role from several cloths. */
  readonly ways: readonly Way[]
  readonly state: 'running' | 'ended' | 'failed'
}

/** The search under way, or the last one. */
export const donorSearch = signal<readonly RoleSearch[]>([])

/** Best first. */
export function rankedRows({ rows, area }: RoleSearch): readonly DonorRow[] {
  return ranked([...rows.values()], area)
}

/** With several roles: a donor for each, no donor twice, best first. */
export const proposals = computed(() => {
  const roles = donorSearch.value.map(({ role, area, rows }) => ({ role, area, rows: [...rows.values()] }))
  return roles.length < 2 ? [] : donorsTogether(roles, 3).filter(({ parts }) => parts.length > 1)
})

/** Looks through the stash for the roles, until the returned function is called. */
export function searchDonors(project: Project, roles: readonly ClothRole[]): () => void {
  const stop = new AbortController()
  const from = onTheShelf(project)
  donorSearch.value = roles.map((role) => emptySearch(project, role))
  for (const role of roles) void searchRole(project, role, from, stop.signal)
  return () => stop.abort()
}

function emptySearch(project: Project, role: ClothRole): RoleSearch {
  const asked = askedOf({ ...project, roles: [role] })
  return { role, area: asked.ok ? asked.value.area : 1, rows: new Map(), ways: [], state: 'running' }
}

function onTheShelf({ id }: Project): readonly GarmentNow[] {
  return garments
    .peek()
    .filter(({ usedUp }) => !usedUp)
    .map((garment) => ({ garment, taken: takenOf(garment.id, clothRecords.peek(), id) }))
}

async function searchRole(
  project: Project,
  role: ClothRole,
  from: readonly GarmentNow[],
  stop: AbortSignal,
): Promise<void> {
  const asks: DonorsAsked = { question: { ...project, roles: [role] }, from }
  try {
    await lookThrough(asks, stop, (told) => {
      const rows = new Map(searchOf(role)?.rows)
      for (const row of told) rows.set(row.donor, row)
      change(role, stop, { rows })
    })
    if (project.blocked.includes(role)) await searchBlocked(asks, role, stop)
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
