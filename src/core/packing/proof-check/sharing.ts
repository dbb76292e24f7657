import type { PackingProblem, Region } from '../problem.ts'
import { type ClashSet, clashSet } from './clash-set.ts'
import { groundArea } from './enough-area.ts'
import { areaWhere } from './exact-area.ts'
import { hasNoPlaceIn } from './no-place.ts'
import { alwaysDiffer, type Work } from './paving.ts'
import { type Pose, Poses } from './poses.ts'

/** What rounding of doubles may have changed in an area, as a share. */
const NOISE = 1e-11

/**
 * True if the copies, each the index of its item, cannot be shared out among the regions: region by region, every
 * number of each item that its area and the pairs allow, until nothing is left.
 */
export function cannotBeShared(problem: PackingProblem, copies: readonly number[], work: Work): boolean {
  const items = [...new Set(copies)]
  const counts = items.map((item) => copies.filter((copy) => copy === item).length)
  const areas = items.map((i) => areaWhere([[problem.items[i]!.outline]], ([inside]) => inside === true))
  const rules = new RegionRules(problem, items, work)
  const dead = new Set<string>()

  const shares = (r: number, left: readonly number[]): boolean => {
    if (left.every((n) => n === 0)) return true
    const region = problem.regions[r]
    const key = `${r} ${left}`
    if (!region || dead.has(key)) return false
    const room = groundArea(region) * (1 + NOISE)
    const choose = (k: number, rest: readonly number[], held: readonly number[], used: number): boolean => {
      if (k === items.length) return shares(r + 1, rest)
      for (let n = rest[k] as number; n >= 0; n--) {
        work.spend(1)
        const after = used + n * (areas[k] as number)
        if (n > 0 && (after > room || !rules.allow(r, k, n, held))) continue
        const nowHeld = n > 0 ? [...held, k] : held
        if (choose(k + 1, rest.with(k, (rest[k] as number) - n), nowHeld, after)) return true
      }
      return false
    }
    if (choose(0, left, [], 0)) return true
    dead.add(key)
    return false
  }
  return !shares(0, counts)
}

/** Which items a region takes, and which two it takes together; worked out when asked. */
class RegionRules {
  private readonly known = new Map<string, boolean>()

  constructor(
    private readonly problem: PackingProblem,
    private readonly items: readonly number[],
    private readonly work: Work,
  ) {}

  /** True if n copies of item k may lie in region r beside the items held there. */
  allow(r: number, k: number, n: number, held: readonly number[]): boolean {
    const item = this.items[k] as number
    if (!this.ask(`${r} ${item}`, () => !hasNoPlaceIn(this.problem, item, r, this.work))) return false
    const others = [...(n > 1 ? [k] : []), ...held].map((other) => this.items[other] as number)
    return others.every((other) =>
      this.ask(`${r} ${other} ${item}`, () => !excludeEachOther(this.problem, other, item, r, this.work)),
    )
  }

  private ask(key: string, answer: () => boolean): boolean {
    const known = this.known.get(key) ?? answer()
    this.known.set(key, known)
    return known
  }
}

/** Positions are cut no finer than this share of the region's longer side. */
const FINEST = 1 / 4096
const EARLY_TILT = 7.5

/** True if two copies in one region always come nearer than the clearance. */
export function excludeEachOther(
  problem: PackingProblem,
  a: number,
  b: number,
  r: number,
  work: Work,
): boolean {
  const posesOf = (i: number) => {
    const poses = new Poses(problem.items[i]!, problem.regions, work)
    return poses.all(r).flatMap((pose) => poses.noWider(pose, EARLY_TILT))
  }
  const [posesOfA, posesOfB] = [posesOf(a), posesOf(b)]
  const side = longerSide(problem.regions[r] as Region)
  return posesOfA.every((p) =>
    posesOfB.every((q) => {
      if (p.way.tilt + q.way.tilt > 0) work.unclear = true
      work.spend(20 * p.parts.length * q.parts.length)
      return alwaysDiffer(p, q, overlapsOf(p, q, problem.clearance), FINEST * side, work)
    }),
  )
}

function longerSide({ outline }: Region): number {
  const extent = (k: 0 | 1) => Math.max(...outline.map((p) => p[k])) - Math.min(...outline.map((p) => p[k]))
  return Math.max(extent(0), extent(1))
}

/** Differences of positions, q's less p's, at which the two come nearer than the clearance. */
export function overlapsOf(p: Pose, q: Pose, clearance: number): readonly ClashSet[] {
  return p.parts.flatMap((fixed) => q.parts.map((moving) => clashSet(fixed, moving, clearance)))
}
