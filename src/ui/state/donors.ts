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
import { garments } from './stash-state.ts'

/** A stash of a thousand is looked through in a few seconds; what is undecided then gets the rest. */
const SECONDS = 30

/** Rows come by the hundred: the screen takes them up ten times a second. */
const SHOW_EVERY_MS = 100

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
  const { tell, flush } = rowTeller(role, stop)
  try {
    await Promise.all(
      shared(from).map((part) => {
        const options = { seed: 1, seconds: SECONDS, priority: PRIORITY.outcomes, onProgress: tell }
        return solvers.ask(stop, 'donors', { ...asks, from: part }, options)
      }),
    )
    flush()
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

/** One share of the garments a worker, dealt out in turn so that each has some of the likely ones. */
function shared(from: readonly GarmentNow[]): readonly (readonly GarmentNow[])[] {
  const hands = Math.max(1, Math.min(solvers.most, from.length))
  return Array.from({ length: hands }, (_, hand) => from.filter((_, k) => k % hands === hand))
}

function rowTeller(role: ClothRole, stop: AbortSignal) {
  let waiting: DonorRow[] = []
  let timer: ReturnType<typeof setTimeout> | null = null
  const flush = () => {
    if (timer !== null) clearTimeout(timer)
    timer = null
    const rows = new Map(searchOf(role)?.rows)
    for (const row of waiting) rows.set(row.donor, row)
    waiting = []
    change(role, stop, { rows })
  }
  const tell = (row: DonorRow) => {
    waiting.push(row)
    timer ??= setTimeout(flush, SHOW_EVERY_MS)
  }
  return { tell, flush }
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
