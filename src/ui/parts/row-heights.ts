/** What the rows of a list are high, as far as they were ever drawn; others are taken to be as high as these on average. */
export class RowHeights {
  readonly #known = new Map<string, number>()
  #sum = 0
  readonly #guess: number

  /** @param guess Taken for a row as long as none is known. */
  constructor(guess: number) {
    this.#guess = guess
  }

  /** Notes a row's height; gives by how much it differs from what it was taken for. */
  note(key: string, height: number): number {
    const before = this.of(key)
    this.#sum += height - (this.#known.get(key) ?? 0)
    this.#known.set(key, height)
    return height - before
  }

  of(key: string): number {
    return this.#known.get(key) ?? this.average
  }

  get average(): number {
    return this.#known.size === 0 ? this.#guess : this.#sum / this.#known.size
  }

  /** Where each row begins, and last where the list ends. */
  starts(keys: readonly string[]): Float64Array {
    const starts = new Float64Array(keys.length + 1)
    keys.forEach((key, k) => {
      starts[k + 1] = (starts[k] as number) + this.of(key)
    })
    return starts
  }
}

/** The rows, from and up to but without, that lie between two heights of the list, with so many more on either side. */
export function rowsBetween(
  starts: Float64Array,
  top: number,
  bottom: number,
  beyond: number,
): readonly [number, number] {
  const count = starts.length - 1
  const first = firstFrom(starts, top) - 1
  const end = firstFrom(starts, bottom)
  return [Math.max(0, Math.min(count, first) - beyond), Math.min(count, Math.max(0, end) + beyond)]
}

/** The first index whose start is over the height; by halving. */
function firstFrom(starts: Float64Array, height: number): number {
  let [low, high] = [0, starts.length - 1]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((starts[middle] as number) > height) high = middle
    else low = middle + 1
  }
  return low
}
