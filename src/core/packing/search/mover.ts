import type { Random } from '../../base/random.ts'
import { SEPARATE } from '../config.ts'
import { type FlatRings, flatContains, flatProject, type Nearest } from '../engine/flat-rings.ts'
import type { ItemClass } from './item-class.ts'
import { type ContactLine, Neighbours } from './neighbours.ts'
import type { Option } from './option.ts'
import { drawOption } from './room.ts'
import type { Separation } from './separation.ts'

/** Most contact lines looked at in one spot. */
const MOST_LINES = 6

/** A position under trial. */
interface Candidate {
  option: Option | null
  x: number
  y: number
  value: number
}

/**
 * Moves one item to the best spot it can find, by weighted overlap: samples over its domains and round its present
 * spot, the best of them refined by coordinate descent (Gardeyn, Vanden Berghe and Wauters 2025) and then by exact
 * contact: straight onto the boundary of a no-fit polygon or onto the crossing of two.
 */
export class Mover {
  private readonly neighbours: Neighbours
  private readonly kept: Candidate[]
  private readonly lines: ContactLine[]
  private readonly corner = { x: 0, y: 0 }
  private readonly nearest: Nearest = { x: 0, y: 0, dx: 0, dy: 0 }
  /** The position that descent works on. */
  private x = 0
  private y = 0
  private value = 0

  constructor(
    private readonly lay: Separation,
    private readonly random: Random,
  ) {
    this.neighbours = new Neighbours(lay.size)
    this.kept = Array.from({ length: SEPARATE.keep }, () => ({ option: null, x: 0, y: 0, value: 0 }))
    this.lines = Array.from({ length: MOST_LINES * 2 }, () => ({ nx: 0, ny: 0, offset: 0 }))
  }

  move(i: number): void {
    const { lay, kept, neighbours, random } = this
    const present = lay.options[i] as Option
    const { kind } = lay.copyOf(i)
    lay.model.noFits.makeRoom()
    for (const candidate of kept) {
      candidate.option = null
      candidate.value = Number.POSITIVE_INFINITY
    }
    this.gather(i, present)
    const startX = lay.x[i] as number
    const startY = lay.y[i] as number
    const presentValue = neighbours.overlap(startX, startY, Number.POSITIVE_INFINITY)
    this.keep(present, startX, startY, presentValue)
    // An item may lie in a way that a lay of tilted or fitted turns gave it and have no option here at all.
    const others = Math.max(0, Math.min(SEPARATE.options, otherOptions(kind)))
    const each = Math.ceil(SEPARATE.samples / (others + 1))
    this.sampleNear(present, startX, startY)
    this.sampleAll(present, each)
    for (let k = 0; k < others; k++) {
      const option = drawOption(kind, (region) => lay.leftIn(region, i), random)
      if (!option) break
      this.gather(i, option)
      if (option.region === present.region) this.sampleNear(option, startX, startY)
      this.sampleAll(option, each)
    }
    this.refineKept(i, present, presentValue)
  }

  private refineKept(i: number, present: Option, presentValue: number): void {
    const { lay, kept } = this
    let best: Candidate | null = null
    for (const candidate of kept) {
      if (!candidate.option) break
      if (candidate.value > 0) {
        this.gather(i, candidate.option)
        this.x = candidate.x
        this.y = candidate.y
        this.value = candidate.value
        const side = narrowerSide(candidate.option)
        this.neighbours.focusOn(this.x, this.y, side * SEPARATE.focus)
        this.descend(candidate.option.domain, side * SEPARATE.firstStep, side * SEPARATE.lastStep)
        this.touch(candidate.option.domain)
        candidate.x = this.x
        candidate.y = this.y
        candidate.value = this.value
      }
      if (!best || candidate.value < best.value) best = candidate
      if (best.value === 0) break
    }
    if (!best?.option) return
    if (best.value > 0) {
      this.gather(i, best.option)
      this.x = best.x
      this.y = best.y
      this.value = best.value
      const side = narrowerSide(best.option)
      this.neighbours.focusOn(this.x, this.y, side * SEPARATE.focus)
      this.descend(best.option.domain, side * SEPARATE.lastStep * 0.5, side * SEPARATE.finestStep)
      this.touch(best.option.domain)
      best.x = this.x
      best.y = this.y
      best.value = this.value
    }
    if (best.value < presentValue || best.option !== present) lay.put(i, best.option, best.x, best.y)
  }

  /** Loads the no-fit polygons that the member meets when held as `option`. */
  private gather(i: number, option: Option): void {
    const { lay, neighbours } = this
    const { noFits } = lay.model
    const handles = noFits.handles(option.shape)
    neighbours.clear(noFits.memory)
    for (let j = 0; j < lay.size; j++) {
      if (j === i || lay.regions[j] !== option.region) continue
      const handle = lay.handleTo(j, option.shape, handles)
      neighbours.add(handle, lay.x[j] as number, lay.y[j] as number, lay.weightOf(i, j))
    }
  }

  private sampleNear(option: Option, x: number, y: number): void {
    const side = narrowerSide(option) * 0.5
    this.neighbours.focusOn(x, y, side)
    for (let k = 0; k < SEPARATE.nearSamples; k++)
      this.sample(option, x + side * (2 * this.random() - 1), y + side * (2 * this.random() - 1))
  }

  private sampleAll(option: Option, count: number): void {
    const { random, neighbours, corner } = this
    const { domain } = option
    for (let k = 0; k < count; k++) {
      if (neighbours.size > 0 && random() < SEPARATE.cornerShare) {
        const j = Math.floor(random() * neighbours.size)
        neighbours.cornerOf(j, random, corner)
        if (flatContains(domain, corner.x, corner.y)) this.sample(option, corner.x, corner.y)
      } else {
        const x = domain.minX + random() * (domain.maxX - domain.minX)
        const y = domain.minY + random() * (domain.maxY - domain.minY)
        this.sample(option, x, y)
      }
    }
  }

  private sample(option: Option, x: number, y: number): void {
    this.project(option.domain, x, y)
    const limit = (this.kept[this.kept.length - 1] as Candidate).value
    const value = this.neighbours.overlap(this.x, this.y, limit)
    if (value < limit) this.keep(option, this.x, this.y, value)
  }

  /** Enters a candidate among the best, in order. */
  private keep(option: Option, x: number, y: number, value: number): void {
    const { kept } = this
    let at = kept.length - 1
    const last = kept[at] as Candidate
    if (value >= last.value) return
    while (at > 0 && (kept[at - 1] as Candidate).value > value) {
      kept[at] = kept[at - 1] as Candidate
      at--
    }
    last.option = option
    last.x = x
    last.y = y
    last.value = value
    kept[at] = last
  }

  /** Sets the working position to (x, y), or to the point of the domain nearest to it. */
  private project(domain: FlatRings, x: number, y: number): void {
    flatProject(domain, x, y, this.nearest)
    this.x = this.nearest.x
    this.y = this.nearest.y
  }

  /** Tries a position and stays there if it is better. */
  private attempt(domain: FlatRings, x: number, y: number): boolean {
    const { x: oldX, y: oldY } = this
    this.project(domain, x, y)
    const value = this.neighbours.overlap(this.x, this.y, this.value)
    if (value < this.value) {
      this.value = value
      return true
    }
    this.x = oldX
    this.y = oldY
    return false
  }

  private descend(domain: FlatRings, firstStep: number, lastStep: number): void {
    let step = firstStep
    while (step > lastStep && this.value > 0) {
      const axis = Math.floor(this.random() * 4)
      const dx = axis === 0 ? 0 : step
      const dy = axis === 1 ? 0 : axis === 3 ? -step : step
      const better =
        this.attempt(domain, this.x + dx, this.y + dy) || this.attempt(domain, this.x - dx, this.y - dy)
      step *= better ? SEPARATE.grow : SEPARATE.cut ** 0.5
    }
  }

  /**
   * Goes where contact is exact: onto the nearest way out of a no-fit polygon, or onto the crossing of two such
   * lines, those of the spot before among them (moving out of one item often means sliding along another).
   */
  private touch(domain: FlatRings): void {
    const { lines } = this
    let older = 0
    for (let round = 0; round < SEPARATE.touches && this.value > 0; round++) {
      const fresh = this.neighbours.contacts(this.x, this.y, lines, MOST_LINES)
      if (fresh === 0 || !this.tryLines(domain, fresh, older)) return
      for (let k = 0; k < fresh; k++) {
        const held = lines[k] as ContactLine
        lines[k] = lines[MOST_LINES + k] as ContactLine
        lines[MOST_LINES + k] = held
      }
      older = fresh
    }
  }

  /** Lines 0 … fresh − 1 lead out of what the item is in now; `older` more, stored behind, did so before. */
  private tryLines(domain: FlatRings, fresh: number, older: number): boolean {
    const { lines, x, y } = this
    let better = false
    for (let a = 0; a < fresh; a++) {
      const line = lines[a] as ContactLine
      const gap = line.offset - line.nx * x - line.ny * y
      if (this.attempt(domain, x + gap * line.nx, y + gap * line.ny)) better = true
      for (let b = 0; b < a; b++) if (this.tryCrossing(domain, line, lines[b] as ContactLine)) better = true
      for (let b = 0; b < older; b++)
        if (this.tryCrossing(domain, line, lines[MOST_LINES + b] as ContactLine)) better = true
    }
    return better
  }

  private tryCrossing(domain: FlatRings, a: ContactLine, b: ContactLine): boolean {
    const det = a.nx * b.ny - a.ny * b.nx
    if (Math.abs(det) < 1e-6) return false
    const x = (a.offset * b.ny - b.offset * a.ny) / det
    const y = (a.nx * b.offset - b.nx * a.offset) / det
    return this.attempt(domain, x, y)
  }
}

/** How many options there are besides one; of many, no more than it takes. */
function otherOptions(kind: ItemClass): number {
  const { regions } = kind
  return regions.length > SEPARATE.options ? regions.length : kind.allowed.length - 1
}

function narrowerSide({ shape: { box } }: Option): number {
  return Math.min(box.maxX - box.minX, box.maxY - box.minY)
}
