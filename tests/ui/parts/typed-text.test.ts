import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readLength } from '../../../src/core/base/length.ts'
import { type Spelling, TypedText } from '../../../src/ui/parts/typed-text.ts'
import { type Units, writeBare } from '../../../src/ui/words/format.ts'

const units: Units = { units: 'cm', inchFraction: 8 }

/** As a length field spells: null while there is no length. */
const spelling: Spelling<number | null> = {
  read: (text) => {
    const read = readLength(text, 'cm')
    return read.ok && read.value > 0 ? read.value : null
  },
  write: (value) => (value === null ? '' : writeBare(value, units)),
  same: (a, b) => (a === null || b === null ? a === b : Math.abs(a - b) < 0.005),
}

type Act =
  | { readonly act: 'key'; readonly key: string }
  | { readonly act: 'erase' }
  | { readonly act: 'answer'; readonly count: number }
  | { readonly act: 'render' }
  | { readonly act: 'leave' }
  | { readonly act: 'enter' }
  | { readonly act: 'elsewhere'; readonly value: number | null }

const typing: fc.Arbitrary<Act> = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...'0123456789.,').map((key) => ({ act: 'key' as const, key })) },
  { weight: 1, arbitrary: fc.constant({ act: 'erase' as const }) },
  { weight: 2, arbitrary: fc.nat({ max: 3 }).map((count) => ({ act: 'answer' as const, count })) },
  { weight: 4, arbitrary: fc.constantFrom('render', 'leave', 'enter').map((act) => ({ act }) as Act) },
)
/** Lengths that are not typed by chance: one that she typed as well could be the answer to her own. */
const elsewhere = fc.constantFrom(87_654, 91_237).map((value) => ({ act: 'elsewhere' as const, value }))

/** A field, its owner that answers when it likes, and how the owner takes what it is told. */
class Desk {
  readonly field: TypedText<number | null>
  owned: number | null
  said: (number | null)[] = []
  typed: string

  constructor(
    start: number | null,
    private readonly take: (value: number | null) => number | null = (value) => value,
  ) {
    this.owned = start
    this.typed = spelling.write(start)
    this.field = new TypedText(start, this.typed)
  }

  type(text: string): void {
    this.typed = text
    const value = this.field.type(text, spelling)
    if (value !== undefined) this.said.push(value)
  }

  answer(count: number): void {
    for (const value of this.said.splice(0, count)) this.owned = this.take(value)
  }

  do(act: Act): void {
    if (act.act === 'key') this.type(this.field.text + act.key)
    else if (act.act === 'erase') this.type(this.field.text.slice(0, -1))
    else if (act.act === 'answer') this.answer(act.count)
    else if (act.act === 'render') this.field.told(this.owned, spelling)
    else if (act.act === 'enter') this.field.enter()
    else if (act.act === 'leave') this.field.leave(spelling)
    else this.changeElsewhere(act.value)
  }

  /** Only her own answers are ever drawn together: another change comes from something that she saw and tapped. */
  changeElsewhere(value: number | null): void {
    this.do({ act: 'render' })
    this.owned = value
    this.do({ act: 'render' })
  }

  settle(): void {
    this.answer(this.said.length)
    this.do({ act: 'render' })
    this.do({ act: 'leave' })
  }
}

describe('what is typed', () => {
  it('stands there to the last key, whenever the answers come', () => {
    fc.assert(
      fc.property(fc.constantFrom(null, 10, 525), fc.array(typing, { maxLength: 30 }), (start, acts) => {
        const desk = new Desk(start)
        for (const act of acts) {
          desk.do(act)
          expect(desk.field.text).toBe(desk.typed)
        }
        desk.settle()
        expect(desk.field.text).toBe(desk.typed)
        expect(spelling.same(desk.owned, spelling.read(desk.typed) ?? null)).toBe(true)
      }),
      { numRuns: 3000 },
    )
  })

  it('is not rewritten while she types by an owner that takes it otherwise, and is once she leaves', () => {
    const whole = (value: number | null) => (value === null ? 10 : Math.floor(value / 10) * 10)
    fc.assert(
      fc.property(fc.array(typing, { maxLength: 30 }), (acts) => {
        const desk = new Desk(10, whole)
        desk.do({ act: 'enter' })
        for (const act of acts.filter((each) => each.act !== 'leave' && each.act !== 'enter')) {
          desk.do(act)
          expect(desk.field.text).toBe(desk.typed)
        }
      }),
    )
    const desk = new Desk(50, whole)
    desk.do({ act: 'enter' })
    desk.type('')
    desk.settle()
    expect(desk.field.text).toBe('1')
  })

  it('gives way to a change from elsewhere, and in the end says what the owner holds', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(typing, elsewhere), { maxLength: 30 }), (acts) => {
        const desk = new Desk(525)
        for (const act of acts) desk.do(act)
        desk.settle()
        // As exactly as the field writes.
        expect(spelling.write(spelling.read(desk.field.text) ?? null)).toBe(spelling.write(desk.owned))
      }),
      { numRuns: 3000 },
    )
  })
})

describe('a change from elsewhere', () => {
  it('shows at once in a field that waits for nothing, even with the cursor in it', () => {
    const desk = new Desk(525)
    desk.do({ act: 'enter' })
    desk.type('60')
    desk.answer(1)
    desk.do({ act: 'render' })
    desk.do({ act: 'elsewhere', value: null })
    desk.do({ act: 'render' })
    expect(desk.field.text).toBe('')
  })

  it('leaves her own way of writing the same', () => {
    const desk = new Desk(525)
    desk.do({ act: 'elsewhere', value: 600 })
    desk.type('52,50')
    desk.settle()
    desk.do({ act: 'elsewhere', value: 525 })
    desk.do({ act: 'render' })
    expect(desk.field.text).toBe('52,50')
  })
})
