import { describe, expect, it } from 'vitest'
import { type GarmentKind, kindOf, startingMeasures } from '../../../src/core/garments/index.ts'
import type { PieceShape } from '../../../src/core/patterns/pattern.ts'
import { remediesFor } from '../../../src/core/planning/remedies/remedies-for.ts'
import type { Remedy, RemedyKind, RemedyStep } from '../../../src/core/planning/remedies/remedy.ts'
import type { CheckDraft } from '../../../src/ui/state/check-draft.ts'
import { queryOf } from '../../../src/ui/state/check-query.ts'
import { changeFor, stepsOf } from '../../../src/ui/state/remedy-change.ts'
import { testDraft, testPattern } from '../../support/check-draft.ts'
import { undecided } from '../../support/check-questions.ts'

/** No gap, and the gauge at its word. */
const EXACT = { clearance: 0, stretchDoubt: 0 }

/** A square with a hem below and 12 mm all round else. */
const square = (side: number): PieceShape => ({
  form: 'outline',
  onFold: false,
  points: [
    { at: [0, 0], allowance: 30, use: 'hem' },
    { at: [side, 0], allowance: 12 },
    { at: [side, side], allowance: 12 },
    { at: [0, side], allowance: 12 },
  ],
})

/** Two sizes, a lining, pieces that may be joined, lean, be sewn more narrowly and use a hem of the garment's. */
const PATTERN = {
  ...testPattern({
    joins: 'across',
    shapes: { S: square(200), M: square(300) },
  }),
  mostTilt: 5,
  leastAllowance: 6,
}

const SHIRT = kindOf('button-shirt')

const DRAFT = testDraft({
  kind: SHIRT.id,
  labelSize: 'M',
  measures: startingMeasures(SHIRT, 'M'),
  version: 'lined',
  flaws: ['a', 'b'].map((id) => ({
    id,
    panel: 'back',
    kind: 'stain',
    shape: { form: 'round', centre: [200, 200], radius: 10 },
  })),
})

function questionOf(draft: CheckDraft, kind: GarmentKind = SHIRT) {
  const asked = queryOf(draft, PATTERN, kind, EXACT)
  if (!asked.ask) throw new Error(asked.missing)
  return asked.question
}

const remedy = (...steps: readonly RemedyStep[]): Remedy => ({ steps, question: questionOf(DRAFT) })

describe('the change that a remedy makes in the check', () => {
  const all = remediesFor(questionOf(DRAFT), undecided(questionOf(DRAFT)))
  const held = all.filter((each) => changeFor(DRAFT, each) !== null)

  it('asks the very question that was solved', () => {
    for (const each of held) {
      expect(questionOf({ ...DRAFT, ...changeFor(DRAFT, each) })).toEqual(each.question)
    }
  })

  it('is there for all that she could have told herself, and for nothing that the check has no place for', () => {
    const kinds = (remedies: readonly Remedy[]) =>
      [...new Set(remedies.flatMap(({ steps }) => steps.map(({ kind }) => kind)))].sort()
    const withPlace: readonly RemedyKind[] = [
      'mend-flaw',
      'other-garment',
      'other-version',
      'own-hem',
      'smaller-size',
      'take-off',
      'unpick',
    ]
    expect(kinds(held)).toEqual(withPlace)
    const without = all.filter((each) => !held.includes(each))
    expect(kinds(without)).toEqual(expect.arrayContaining(['join', 'narrower-seams', 'tilt']))
    expect(kinds(without).filter((kind) => withPlace.includes(kind))).toEqual([])
  })

  it('holds only what it changes', () => {
    expect(changeFor(DRAFT, remedy({ kind: 'smaller-size', size: 'S', down: 1 }))).toEqual({ size: 'S' })
    expect(
      changeFor(DRAFT, remedy({ kind: 'mend-flaw', flaw: 'a', panel: 'back', flawKind: 'stain', area: 314 })),
    ).toEqual({ flaws: DRAFT.flaws.slice(1) })
  })

  it('makes both of two, or neither', () => {
    const [unpick, tilt, smaller] = [
      { kind: 'unpick', gained: 5000 },
      { kind: 'tilt', pieces: ['side'], from: 0, to: 5 },
      { kind: 'smaller-size', size: 'S', down: 1 },
    ] as const
    expect(changeFor(DRAFT, remedy(unpick, smaller))).toEqual({ opening: 'unpicked', size: 'S' })
    expect(changeFor(DRAFT, remedy(tilt, unpick))).toBeNull()
  })

  it('is none for a step whose cost fell away in the lay', () => {
    const idle = { kind: 'quarter-turn', pieces: [] } as const
    expect(stepsOf(remedy(idle))).toEqual([])
    expect(changeFor(DRAFT, remedy(idle))).toBeNull()
    expect(changeFor(DRAFT, remedy(idle, { kind: 'unpick', gained: 5000 }))).toEqual({ opening: 'unpicked' })
  })

  it('is none for a piece that must come from another garment by itself', () => {
    const step = { kind: 'other-garment', pieces: ['side'], copies: 1, area: 90_000 } as const
    expect(changeFor(DRAFT, remedy({ ...step, role: null }))).toBeNull()
    expect(changeFor(DRAFT, remedy({ ...step, role: 'lining' }))).toEqual({ otherRoles: ['lining'] })
  })
})
