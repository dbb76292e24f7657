import { deadlineAfter } from '../../core/base/deadline.ts'
import { MEASURED_KINDS } from '../../core/garments/index.ts'
import type { Pattern } from '../../core/patterns/index.ts'
import type { KindBrief } from '../../core/planning/shopping-brief/brief.ts'
import { shoppingBrief } from '../../core/planning/shopping-brief/shopping-brief.ts'
import { demoPatterns } from './demo.ts'
import { quantile } from './figures.ts'

/** What one kind of garment may take. */
const BRIEF_SECONDS = 5

/** How long it took to say what to look for, and how much was left open. */
export interface BriefsFigure {
  readonly briefs: number
  /** Milliseconds to the first figure where there is one, and to the last. */
  readonly firstMedian: number
  readonly median: number
  readonly p95: number
  /** Briefs that tell a garment that does, and those in which all garments of the kind are proved too small. */
  readonly found: number
  readonly none: number
  /** Between what is proved too small and what does, in per cent of the latter's width: the median where both are told. */
  readonly open: number
}

interface Timed {
  readonly brief: KindBrief
  readonly first: number | null
  readonly ms: number
}

const clock = () => performance.now()

/** The first version of every demo pattern in its middle size, out of each kind of garment, on one worker. */
export function runBriefs(): BriefsFigure {
  const timed = demoPatterns().flatMap((pattern) => MEASURED_KINDS.map((kind) => briefOf(pattern, kind)))
  const times = timed.map(({ ms }) => ms)
  return {
    briefs: timed.length,
    firstMedian: quantile(
      timed.flatMap(({ first }) => first ?? []),
      0.5,
    ),
    median: quantile(times, 0.5),
    p95: quantile(times, 0.95),
    found: timed.filter(({ brief }) => brief.enough.length > 0).length,
    none: timed.filter(({ brief }) => brief.none).length,
    open: quantile(
      timed.flatMap(({ brief }) => openShare(brief) ?? []),
      0.5,
    ),
  }
}

function briefOf(pattern: Pattern, kind: KindBrief['kind']): Timed {
  const { sizes, versions } = pattern
  const [size = ''] = sizes.slice(Math.floor(sizes.length / 2))
  const asked = { pattern, version: versions[0]?.id ?? '', size, kind, roles: null, clearance: 0 }
  const start = clock()
  let first: number | null = null
  const control = { seed: 1, clock, deadline: deadlineAfter(1000 * BRIEF_SECONDS, clock) }
  const answer = shoppingBrief({ ...asked, doubt: 8, units: 'cm' }, control, ({ enough }) => {
    if (enough.length > 0) first ??= clock() - start
  })
  if (!answer.ok) throw new Error(JSON.stringify(answer.faults))
  return { brief: answer.value, first, ms: clock() - start }
}

function openShare({ kind, enough: [found], tooSmall: [proved] }: KindBrief): number | null {
  if (kind === 'cloth' || !found || !proved) return null
  return (100 * (found.width - proved.width)) / found.width
}
