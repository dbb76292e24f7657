import { describe, expect, it } from 'vitest'
import type { Cut } from '../../../src/core/stash/cut.ts'
import { projectProgress, projectRoles, projectStage } from '../../../src/core/stash/progress.ts'
import type { Project } from '../../../src/core/stash/project.ts'
import type { LaidPiece, Reservation } from '../../../src/core/stash/reservation.ts'
import { testProject } from '../../support/records.ts'
import { testPattern } from '../../support/storage.ts'

const pieces = [
  { id: 'sleeve', role: 'main', copies: 2, optional: false },
  { id: 'lining', role: 'lining', copies: 1, optional: false },
  { id: 'pocket', role: 'main', copies: 1, optional: true },
].map((piece) => ({
  ...piece,
  name: piece.id,
  mirror: 'none' as const,
  grain: 'along' as const,
  tilt: 0,
  needs: { across: 0, along: 0 },
  surface: 'as-panel' as const,
  shapes: {},
}))

const project = testProject({
  id: 'p',
  name: 'Top',
  pattern: testPattern({
    pieces,
    versions: [{ id: 'plain', name: 'Plain', pieces: ['sleeve', 'lining', 'pocket'] }],
  }),
})

const laid = (piece: string, copy = 1): LaidPiece => {
  return { piece, copy, panel: 'front', turn: 0, mirrored: false, x: 0, y: 0, outline: [] }
}
const reserved = (garment: string, ...laidPieces: readonly LaidPiece[]): Reservation => {
  return { id: garment, project: 'p', garment, pieces: laidPieces, clearance: 0, spare: null }
}
const cut = (garment: string, ...laidPieces: readonly LaidPiece[]): Cut => ({
  id: `cut-${garment}`,
  project: 'p',
  garment,
  panel: 'front',
  outline: [],
  flaws: [],
  pieces: laidPieces,
  reservation: garment,
  offcuts: [],
  at: 0,
})

describe('the progress of a project', () => {
  it('tells each copy’s state and garment, in the pattern’s order', () => {
    const records = {
      reservations: [reserved('tee', laid('sleeve', 2))],
      cuts: [cut('sheet', laid('lining'))],
    }
    const said = projectProgress(project, records).map(
      ({ piece, copy, state, garment }) => `${piece.id}#${copy} ${state} ${garment}`,
    )
    expect(said).toEqual([
      'sleeve#1 missing null',
      'sleeve#2 reserved tee',
      'lining#1 cut sheet',
      'pocket#1 missing null',
    ])
  })

  it('takes no notice of other projects', () => {
    const theirs = { ...reserved('tee', laid('sleeve', 1)), project: 'another' }
    const states = projectProgress(project, { reservations: [theirs], cuts: [] }).map(({ state }) => state)
    expect(new Set(states)).toEqual(new Set(['missing']))
  })

  it('has the roles of the pieces its version needs', () => {
    expect(projectRoles(project)).toEqual(['main', 'lining'])
  })
})

describe('the stage of a project', () => {
  const both = [laid('sleeve', 1), laid('sleeve', 2)]
  const stage = (reservations: readonly Reservation[], cuts: readonly Cut[], change: Partial<Project> = {}) =>
    projectStage({ ...project, ...change }, { reservations, cuts })

  it('goes from planned to cut, with no regard to what is optional', () => {
    expect(stage([], [])).toBe('planned')
    expect(stage([reserved('tee', ...both)], [])).toBe('partly')
    expect(stage([reserved('tee', ...both), reserved('sheet', laid('lining'))], [])).toBe('reserved')
    expect(stage([reserved('tee', ...both)], [cut('sheet', laid('lining'))])).toBe('cutting')
    expect(stage([], [cut('tee', ...both), cut('sheet', laid('lining'))])).toBe('cut')
  })

  it('is finished once she says so', () => {
    expect(stage([], [], { finished: true })).toBe('finished')
  })
})
