import type { Deadline } from '../../base/deadline.ts'
import { type Random, shuffle } from '../../base/random.ts'
import { NO_OVERLAP, SEPARATE } from '../config.ts'
import { flatProject } from '../engine/flat-rings.ts'
import type { Shape } from '../engine/shapes.ts'
import type { Region } from '../problem.ts'
import type { Layout, Spot } from './layout.ts'
import type { Copy, Model } from './model.ts'
import { Mover } from './mover.ts'
import type { Option } from './option.ts'
import { netArea } from './room.ts'

/**
 * A lay in which items may overlap, and the weights that guide it out of local minima (guided local search as in
 * Egeblad, Nielsen and Odgaard 2007; Imamichi, Yagiura and Nagamochi 2009; Umetani et al. 2009; Elkeran 2013;
 * Gardeyn, Vanden Berghe and Wauters 2025). Every item lies inside its domain; only overlaps between items are
 * penalised, by penetration depth.
 */
export class Separation {
  /** Copies taking part, as indices into the model's copies. */
  readonly members: readonly number[]
  readonly options: Option[]
  readonly x: Float64Array
  readonly y: Float64Array
  /** Region and shape of every member's option, for loops. */
  readonly regions: Int32Array
  private readonly shapeIds: Int32Array
  private readonly weights: Float64Array
  /** Penetration depth of every pair of members as it lies now. */
  private readonly depths: Float64Array
  /** What a millimetre of depth costs for each pair, before weights. */
  private readonly scale: Float64Array
  /** Area of the members in every region. */
  private readonly used: Float64Array
  private readonly mover: Mover

  constructor(
    readonly model: Model,
    start: Layout,
    private readonly random: Random,
  ) {
    this.members = start.flatMap((spot, c) => (spot ? [c] : []))
    const spots = this.members.map((c) => start[c] as Spot)
    this.options = spots.map(({ option }) => option)
    this.x = Float64Array.from(spots, (spot) => spot.x)
    this.y = Float64Array.from(spots, (spot) => spot.y)
    this.regions = Int32Array.from(this.options, ({ region }) => region)
    this.shapeIds = Int32Array.from(this.options, ({ shape }) => shape.id)
    this.weights = new Float64Array(this.size * this.size).fill(1)
    this.depths = new Float64Array(this.size * this.size)
    this.scale = pairScales(this.members.map((c) => (model.copies[c] as Copy).kind.area))
    this.used = new Float64Array(model.problem.regions.length)
    for (let i = 0; i < this.size; i++) this.addArea(i, 1)
    this.mover = new Mover(this, random)
    for (let i = 0; i < this.size; i++) this.measure(i)
  }

  get size(): number {
    return this.members.length
  }

  copyOf(member: number): Copy {
    return this.model.copies[this.members[member] as number] as Copy
  }

  weightOf(i: number, j: number): number {
    return (this.weights[i * this.size + j] as number) * (this.scale[i * this.size + j] as number)
  }

  /** Penetration depth of two members as they lie, mm; 0 if they keep clear of each other. */
  depthOf(i: number, j: number): number {
    return this.depths[i * this.size + j] as number
  }

  /** What all overlaps cost, without weights; 0 if nothing overlaps. */
  get overlap(): number {
    const { size, depths, scale } = this
    let sum = 0
    for (let i = 0; i < size; i++)
      for (let k = i * size; k < i * size + i; k++) sum += (depths[k] as number) * (scale[k] as number)
    return sum
  }

  /** Deepest overlap of one member with any other. */
  worstOf(i: number): number {
    let worst = 0
    for (let j = 0; j < this.size; j++) worst = Math.max(worst, this.depths[i * this.size + j] as number)
    return worst
  }

  /** Area left in a region if the member lay there, mm²; below 0, the region is too full. */
  leftIn(region: number, i: number): number {
    const others = (this.used[region] as number) - (this.regions[i] === region ? this.areaOf(i) : 0)
    return netArea(this.model.problem.regions[region] as Region) - others - this.areaOf(i)
  }

  private areaOf(i: number): number {
    return this.copyOf(i).kind.area
  }

  private addArea(i: number, sign: 1 | -1): void {
    const region = this.regions[i] as number
    this.used[region] = (this.used[region] as number) + sign * this.areaOf(i)
  }

  put(i: number, option: Option, x: number, y: number): void {
    this.hold(i, option)
    this.x[i] = x
    this.y[i] = y
    this.measure(i)
  }

  private hold(i: number, option: Option): void {
    this.addArea(i, -1)
    this.options[i] = option
    this.regions[i] = option.region
    this.addArea(i, 1)
    this.shapeIds[i] = option.shape.id
  }

  /** As `put`, at the point of the option's domain nearest to (x, y). */
  putInside(i: number, option: Option, x: number, y: number): void {
    const nearest = { x, y, dx: 0, dy: 0 }
    flatProject(option.domain, x, y, nearest)
    this.put(i, option, nearest.x, nearest.y)
  }

  /** Handle of the no-fit polygon that a shape meets in member j; `handles` are that shape's. */
  handleTo(j: number, shape: Shape, handles: Int32Array): number {
    const known = handles[this.shapeIds[j] as number] as number
    return known > 0 ? known : this.model.noFits.handle((this.options[j] as Option).shape, shape)
  }

  private measure(i: number): void {
    const { size, depths, options, regions, x, y } = this
    const { noFits } = this.model
    const { region, shape } = options[i] as Option
    const handles = noFits.handles(shape)
    for (let j = 0; j < size; j++) {
      let depth = 0
      if (j !== i && regions[j] === region) {
        depth = noFits.memory.depth(
          this.handleTo(j, shape, handles),
          (x[i] as number) - (x[j] as number),
          (y[i] as number) - (y[j] as number),
        )
        if (depth < NO_OVERLAP) depth = 0
      }
      depths[i * size + j] = depth
      depths[j * size + i] = depth
    }
  }

  /** One round: every overlapping member moves once, in chance order, as far as there is time. */
  moveAll(deadline: Deadline): void {
    const colliding: number[] = []
    for (let i = 0; i < this.size; i++) if (this.worstOf(i) > 0) colliding.push(i)
    for (const i of shuffle(colliding, this.random)) {
      if (deadline.passed()) return
      if (this.worstOf(i) > 0) this.mover.move(i)
    }
  }

  /** Pairs that overlap weigh more from now on, most where they are deepest; the others slowly forget. */
  updateWeights(): void {
    const { depths, weights } = this
    let worst = 0
    for (const depth of depths) if (depth > worst) worst = depth
    if (worst === 0) return
    const many = this.model.problem.regions.length > SEPARATE.manyRegions
    const { least, most } = many ? SEPARATE.gentleGrowth : SEPARATE.growth
    const span = most - least
    for (let k = 0; k < weights.length; k++) {
      const depth = depths[k] as number
      const weight = weights[k] as number
      weights[k] =
        depth > 0 ? weight * (least + (span * depth) / worst) : Math.max(1, weight * SEPARATE.decay)
    }
  }

  resetWeights(): void {
    this.weights.fill(1)
  }

  save(): SavedSeparation {
    return { options: [...this.options], x: this.x.slice(), y: this.y.slice(), overlap: this.overlap }
  }

  restore(saved: SavedSeparation): void {
    saved.options.forEach((option, i) => {
      this.hold(i, option)
    })
    this.x.set(saved.x)
    this.y.set(saved.y)
    for (let i = 0; i < this.size; i++) this.measure(i)
  }

  /** The lay as it stands, overlaps included. */
  layout(): Layout {
    const layout: (Spot | null)[] = this.model.copies.map(() => null)
    this.members.forEach((c, i) => {
      layout[c] = { option: this.options[i] as Option, x: this.x[i] as number, y: this.y[i] as number }
    })
    return layout
  }
}

/**
 * The geometric mean of the square roots of both areas, relative to the mean area (Gardeyn, Vanden Berghe and
 * Wauters 2025): a millimetre into a big item is harder to repair than one into a small one.
 */
function pairScales(areas: readonly number[]): Float64Array {
  const mean = areas.reduce((sum, area) => sum + area, 0) / areas.length
  const factors = areas.map((area) => (area / mean) ** SEPARATE.areaPower)
  return Float64Array.from(factors.flatMap((a) => factors.map((b) => a * b)))
}

export interface SavedSeparation {
  readonly options: readonly Option[]
  readonly x: Float64Array
  readonly y: Float64Array
  readonly overlap: number
}
