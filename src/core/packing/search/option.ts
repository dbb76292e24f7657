import type { Rings } from '../../geometry/types.ts'
import { forbiddenTo } from '../engine/confinement.ts'
import { type FlatRings, flatRings } from '../engine/flat-rings.ts'
import { feasibleDomain } from '../engine/inner-fit.ts'
import type { Shape } from '../engine/shapes.ts'
import type { Region } from '../problem.ts'

/** Where the reference points of shapes may be in regions. */
export interface DomainSource {
  of(region: number, shape: Shape): Rings
}

/** Domains of shapes that may lie anywhere in a region; equal regions share theirs. */
export class Domains implements DomainSource {
  private readonly known = new Map<string, Rings>()
  private readonly regionKeys: readonly string[]

  constructor(private readonly regions: readonly Region[]) {
    const keys = regions.map(
      (region) => `${region.outline.join(' ')}/${forbiddenTo(false, region).join('/')}`,
    )
    this.regionKeys = keys.map((key) => String(keys.indexOf(key)))
  }

  of(region: number, shape: Shape): Rings {
    const key = `${this.regionKeys[region]} ${shape.id}`
    let rings = this.known.get(key)
    if (!rings) {
      const ground = this.regions[region] as Region
      rings = feasibleDomain(ground.outline, forbiddenTo(false, ground), shape.outline)
      this.known.set(key, rings)
    }
    return rings
  }
}

/** One way to place an item: a shape in a region. Where its reference point may be is computed when first asked for. */
export class Option {
  private rings: Rings | null = null
  private flat: FlatRings | null = null

  constructor(
    readonly region: number,
    readonly shape: Shape,
    private readonly domains: DomainSource,
  ) {}

  get domainRings(): Rings {
    this.rings ??= this.domains.of(this.region, this.shape)
    return this.rings
  }

  /** For hot loops; only options that are not empty have one. */
  get domain(): FlatRings {
    this.flat ??= flatRings(this.domainRings)
    return this.flat
  }

  get isEmpty(): boolean {
    return this.domainRings.length === 0
  }
}
