import { describe, expect, it } from 'vitest'
import { NO_CONTENTS } from '../../../src/core/records/record.ts'
import { conflictWords } from '../../../src/ui/words/yours-words.ts'
import { contents, kept, testGarment } from '../../support/records.ts'

const REF = { store: 'garments', id: 'g1' } as const
const HOLDS = contents({ garments: [kept(testGarment({ id: 'g1', name: 'Striped tee' }), 5)] })
const UNREAD = { ...NO_CONTENTS, unread: [{ ...REF, record: { id: 'g1' } }] }

describe('what both devices have changed', () => {
  it('is told by its name and whose change is taken', () => {
    expect(conflictWords({ ...REF, taken: 'there' }, HOLDS, HOLDS)).toBe(
      'Garment “Striped tee”: as it is in the file',
    )
    expect(conflictWords({ ...REF, taken: 'here' }, HOLDS, NO_CONTENTS)).toBe(
      'Garment “Striped tee”: as it is here',
    )
  })

  it('is told as removed where the taken side has it no more', () => {
    expect(conflictWords({ ...REF, taken: 'there' }, HOLDS, NO_CONTENTS)).toBe(
      'Garment “Striped tee”: goes, as it was removed in the file',
    )
    expect(conflictWords({ ...REF, taken: 'here' }, NO_CONTENTS, HOLDS)).toBe(
      'Garment “Striped tee”: stays removed, as it is here',
    )
  })

  it('is not taken for removed where this version of the app cannot read it', () => {
    expect(conflictWords({ ...REF, taken: 'there' }, HOLDS, UNREAD)).toMatch(/: as it is in the file$/)
  })
})
