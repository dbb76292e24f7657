import { describe, expect, it } from 'vitest'
import { askedOf, donorProblem } from '../../../../src/core/planning/donors/asked.ts'
import { findDonors } from '../../../../src/core/planning/donors/find-donors.ts'
import type { DonorRow } from '../../../../src/core/planning/donors/row.ts'
import { uncutCopies } from '../../../../src/core/planning/project-question.ts'
import { reservationFrom } from '../../../../src/core/planning/reservation-from.ts'
import { boxPiece, patternOf } from '../../../support/check-questions.ts'
import { asked, cloth, UNHURRIED } from '../../../support/donors.ts'
import { rectangle } from '../../../support/lay-problems.ts'
import { laidAt, records } from '../../../support/stash.ts'
import { testCut, testProject } from '../../../support/two-devices.ts'

const shirt = patternOf([
  boxPiece('front', 100, 60, { copies: 2, mirror: 'pairs' }),
  boxPiece('back', 200, 60),
  boxPiece('facing', 50, 50, { role: 'lining' }),
])

const rowOf = (copies: Readonly<Record<string, readonly number[]>>, width: number, height: number) => {
  const question = asked(shirt, { copies, roles: ['main'] })
  const rows = [...findDonors(question, [cloth('d', width, height)], UNHURRIED)]
  return { question, row: rows.at(-1) as DonorRow }
}

describe('donors for a project of which some is cut', () => {
  it('need yield only the copies that are named', () => {
    expect(rowOf({ front: [1, 2], back: [1] }, 100, 60).row.verdict).toBe('cannot')
    expect(rowOf({ front: [2] }, 100, 60).row).toMatchObject({ verdict: 'fits', missing: 0 })
    expect(rowOf({ front: [1, 2] }, 100, 60).row.verdict).toBe('cannot')
  })

  it('give the copy that was wanted its own number and side', () => {
    const { question, row } = rowOf({ front: [2] }, 100, 60)
    const problem = donorProblem(question, cloth('d', 100, 60), row.heads)
    const answer = { problem, lay: row.lay, heads: row.heads }
    const ids = { id: 'r', project: 'p', garment: 'd' }
    const { pieces } = reservationFrom(answer, ids, { pattern: shirt, copies: { front: [2] } })
    expect(pieces).toMatchObject([{ piece: 'front', copy: 2, mirrored: true }])
  })

  it('are looked for only while a copy is wanted', () => {
    const question = { pattern: shirt, version: shirt.versions[0]?.id ?? '', size: 'M', clearance: 0 }
    const result = askedOf({ ...question, colours: {}, roles: ['main'], copies: { facing: [1] } })
    expect(result).toMatchObject({ ok: false, faults: [{ field: 'copies' }] })
  })
})

describe('the copies that a project still wants', () => {
  const project = testProject({ id: 'p', pattern: shirt, version: shirt.versions[0]?.id ?? '', size: 'M' })
  const cut = (piece: string, copy: number) =>
    testCut({ project: 'p', id: `${piece}#${copy}`, pieces: [laidAt(piece, rectangle(100, 60), { copy })] })

  it('are those not cut, whether reserved or not', () => {
    const some = records({ cuts: [cut('front', 1), cut('facing', 1)] })
    expect(uncutCopies(project, ['main'], some)).toEqual({ front: [2], back: [1] })
    expect(uncutCopies(project, ['lining'], some)).toBeNull()
    expect(uncutCopies(project, null, some)).toEqual({ front: [2], back: [1] })
  })
})
