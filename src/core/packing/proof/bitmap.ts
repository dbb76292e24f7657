/** A rectangle of bits, one row after the other, 32 to the word. */
export class Bitmap {
  readonly words: Uint32Array
  private readonly perRow: number

  constructor(
    readonly width: number,
    readonly height: number,
    words?: Uint32Array,
  ) {
    this.perRow = Math.ceil(width / 32)
    this.words = words ?? new Uint32Array(this.perRow * height)
  }

  copy(): Bitmap {
    return new Bitmap(this.width, this.height, this.words.slice())
  }

  has(x: number, y: number): boolean {
    return (((this.words[y * this.perRow + (x >> 5)] as number) >>> (x & 31)) & 1) === 1
  }

  set(x: number, y: number): void {
    const at = y * this.perRow + (x >> 5)
    this.words[at] = (this.words[at] as number) | (1 << (x & 31))
  }

  clear(x: number, y: number): void {
    const at = y * this.perRow + (x >> 5)
    this.words[at] = (this.words[at] as number) & ~(1 << (x & 31))
  }

  /** Clears the bits from `from` to `to`, both included, of row `y`; what lies outside the map is ignored. */
  clearRun(y: number, from: number, to: number): void {
    if (y < 0 || y >= this.height) return
    const first = Math.max(0, from)
    const last = Math.min(this.width - 1, to)
    if (first > last) return
    const row = y * this.perRow
    for (let word = first >> 5; word <= last >> 5; word++) {
      const low = Math.max(first - 32 * word, 0)
      const high = Math.min(last - 32 * word, 31)
      const mask = (0xffffffff >>> (31 - high)) & (0xffffffff << low)
      this.words[row + word] = (this.words[row + word] as number) & ~mask
    }
  }

  count(): number {
    let total = 0
    for (const word of this.words) total += bitsOf(word)
    return total
  }

  /** Every set bit as [x, y], row by row. */
  *cells(): Generator<readonly [number, number]> {
    for (let y = 0; y < this.height; y++)
      for (let x = 0; x < this.width; x++) if (this.has(x, y)) yield [x, y]
  }
}

/** How many bits of a word are set. */
function bitsOf(word: number): number {
  let v = word - ((word >>> 1) & 0x55555555)
  v = (v & 0x33333333) + ((v >>> 2) & 0x33333333)
  return Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24
}
