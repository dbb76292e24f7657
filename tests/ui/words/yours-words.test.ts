import { describe, expect, it } from 'vitest'
import type { RecordStore } from '../../../src/core/records/record.ts'
import { NO_CONTENTS } from '../../../src/core/records/record.ts'
import { unitsOf } from '../../../src/core/records/units.ts'
import { garmentSchema } from '../../../src/readers/model/garment.ts'
import { notionSchema } from '../../../src/readers/model/notion.ts'
import { patternSchema } from '../../../src/readers/model/pattern.ts'
import { projectSchema } from '../../../src/readers/model/project.ts'
import { yours } from '../../../src/ui/words/en/yours.ts'
import { conflictWords, unitWords } from '../../../src/ui/words/yours-words.ts'
import { contents, kept, testGarment } from '../../support/records.ts'

const REF = { store: 'garments', id: 'g1' } as const
const HOLDS = contents({ garments: [kept(testGarment({ id: 'g1', name: 'Striped tee' }), 5)] })
const UNREAD = { ...NO_CONTENTS, unread: [{ ...REF, record: { id: 'g1' } }] }

describe('what both devices have changed', () => {
  it('is told by its name and whose change is taken', () => {
    expect(conflictWords({ ...REF, taken: 'there', units: [] }, HOLDS, HOLDS)).toBe(
      'Garment “Striped tee”: as it is in the file',
    )
    expect(conflictWords({ ...REF, taken: 'here', units: [] }, HOLDS, NO_CONTENTS)).toBe(
      'Garment “Striped tee”: as it is here',
    )
  })

  it('is told as removed where the taken side has it no more', () => {
    expect(conflictWords({ ...REF, taken: 'there', units: [] }, HOLDS, NO_CONTENTS)).toBe(
      'Garment “Striped tee”: goes, as it was removed in the file',
    )
    expect(conflictWords({ ...REF, taken: 'here', units: [] }, NO_CONTENTS, HOLDS)).toBe(
      'Garment “Striped tee”: stays removed, as it is here',
    )
  })

  it('is not taken for removed where this version of the app cannot read it', () => {
    expect(conflictWords({ ...REF, taken: 'there', units: [] }, HOLDS, UNREAD)).toMatch(
      /: as it is in the file$/,
    )
  })
})

describe('fields that both devices have changed', () => {
  it('are named, each with the side it is taken from', () => {
    const units = [
      { unit: 'name', taken: 'there' },
      { unit: 'measures.chest', taken: 'here' },
      { unit: 'cloth.colour', taken: 'here' },
    ] as const
    expect(conflictWords({ ...REF, taken: 'there', units }, HOLDS, HOLDS)).toBe(
      'Garment “Striped tee”: measures (Chest) and colour as it is here; name as it is in the file',
    )
  })

  it('have a name each, of whatever record', () => {
    const schemas = {
      garments: garmentSchema,
      patterns: patternSchema,
      projects: projectSchema,
      notions: notionSchema,
    }
    const named = Object.entries(schemas).flatMap(([store, { shape }]) => [
      ...unitsOf(
        store as RecordStore,
        Object.fromEntries(Object.keys(shape).map((field) => [field, 1])),
      ).keys(),
    ])
    const inside = [...unitsOf('garments', testGarment({ flaws: [{ id: 'f' }] as never })).keys()]
    expect(named.length).toBeGreaterThan(30)
    // Of what stands inside others each has a name; the whole has none.
    const all = [...named.filter((unit) => !inside.some((each) => each.startsWith(`${unit}.`))), ...inside]
    const nameless = all.filter(
      (unit) => (yours.units[unit] ?? yours.units[unit.split('.')[0] ?? '']) === undefined,
    )
    expect(nameless).toEqual([])
    expect(unitWords('measures.hem-width')).toBe('measures (Hem)')
    expect(unitWords('flaws.x1')).toBe('a flaw')
  })
})
