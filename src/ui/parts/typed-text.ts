/** How the text of a field and the value it stands for become one another. */
export interface Spelling<V> {
  /** undefined: the text stands for no value, and the owner is told nothing. */
  readonly read: (text: string) => V | undefined
  readonly write: (value: V) => string
  readonly same: (a: V, b: V) => boolean
}

/**
 * The text of one field, and whose turn it is to change it. What she types is hers: an answer to something typed before
 * never rewrites it, however late it comes. A value that answers nothing typed here came from elsewhere (a step, a drag,
 * an undo) and is written out, but not into a text that still waits for its own answer: that one is put right when she
 * leaves the field.
 */
export class TypedText<V> {
  text: string
  focused = false
  #told: V
  /** Values given to the owner and not seen back yet, in order. It may answer several at once with the last. */
  #awaited: V[] = []
  /** The owner holds something else than the text says. */
  #differs = false

  constructor(told: V, text: string) {
    this.#told = told
    this.text = text
  }

  /** She typed. Gives what the owner is to be told; undefined: nothing. */
  type(text: string, spelling: Spelling<V>): V | undefined {
    this.text = text
    this.#differs = false
    const value = spelling.read(text)
    if (value === undefined) return undefined
    const last = this.#awaited.length === 0 ? this.#told : (this.#awaited.at(-1) as V)
    if (!spelling.same(last, value)) this.#awaited.push(value)
    return value
  }

  /** The owner's value as it is now; asked at every rendering. */
  told(value: V, spelling: Spelling<V>): void {
    const { same } = spelling
    if (same(this.#told, value)) return
    this.#told = value
    const at = this.#awaited.findIndex((each) => same(each, value))
    this.#differs = at < 0
    if (at >= 0) this.#awaited.splice(0, at + 1)
    else if (!this.focused || this.#awaited.length === 0) this.rewrite(spelling)
  }

  /** Writes the owner's value out, unless the text says it already in her own way ("52," for 52). */
  rewrite({ read, write, same }: Spelling<V>): void {
    const held = read(this.text)
    if (held === undefined || !same(held, this.#told)) this.text = write(this.#told)
    this.#awaited = []
    this.#differs = false
  }

  enter(): void {
    this.focused = true
  }

  leave(spelling: Spelling<V>): void {
    this.focused = false
    if (this.#differs) this.rewrite(spelling)
  }
}
