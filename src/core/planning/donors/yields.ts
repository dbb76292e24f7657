import type { Pattern } from '../../patterns/pattern.ts'
import { type Asked, askedOf, type DonorQuestion } from './asked.ts'
import type { Donor } from './donor.ts'
import type { FindControl } from './find-donors.ts'
import { inPasses } from './passes.ts'
import { type DonorRow, lookAt } from './row.ts'
import { freeArea } from './waste.ts'

/** What a donor would yield of one size of one version of a pattern, all roles together. */
export interface YieldRow extends DonorRow {
  /** Ids, and the size's name. */
  readonly pattern: string
  readonly version: string
  readonly size: string
}

/** What she sets for all patterns. */
export type YieldAsks = Pick<DonorQuestion, 'clearance' | 'stretchDoubt'>

interface Task {
  readonly pattern: string
  readonly version: string
  readonly size: string
  readonly asked: Asked
  /** Share of the free cloth that the pieces take. */
  readonly share: number
}

/**
 * Every size and version of every pattern against one donor, told row by row: the likeliest first, which are those that
 * take the smallest share of the cloth, and in passes as `findDonors`. What a pattern lacks in a size is passed over.
 */
export function* yieldsOf(
  donor: Donor,
  patterns: readonly Pattern[],
  asks: YieldAsks,
  control: FindControl,
  known: readonly YieldRow[] = [],
): Generator<YieldRow, void> {
  const rows = new Map(known.map((row) => [keyOf(row), row]))
  const free = freeArea(donor.panels)
  const tasks = patterns.flatMap((pattern) => tasksOf(pattern, asks, free)).sort((a, b) => a.share - b.share)
  yield* inPasses(tasks, {
    control,
    known: (task) => rows.get(keyOf(task)) ?? null,
    look: ({ pattern, version, size, asked }, limits, before: YieldRow | null, isLast): YieldRow => ({
      ...lookAt(asked, donor, limits, before, isLast),
      pattern,
      version,
      size,
    }),
    compare: (a, b) => a.missing - b.missing,
  })
}

function tasksOf(pattern: Pattern, asks: YieldAsks, free: number): readonly Task[] {
  return pattern.versions.flatMap(({ id: version }) =>
    pattern.sizes.flatMap((size): readonly Task[] => {
      const asked = askedOf({ pattern, version, size, roles: null, colours: {}, ...asks })
      if (!asked.ok) return []
      return [{ pattern: pattern.id, version, size, asked: asked.value, share: asked.value.area / free }]
    }),
  )
}

function keyOf({ pattern, version, size }: Pick<YieldRow, 'pattern' | 'version' | 'size'>): string {
  return JSON.stringify([pattern, version, size])
}
