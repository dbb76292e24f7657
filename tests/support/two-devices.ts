import fc from 'fast-check'
import type { Polygon } from '../../src/core/geometry/types.ts'
import { mergeContents, type Side } from '../../src/core/records/merge.ts'
import { type Contents, NO_CONTENTS } from '../../src/core/records/record.ts'
import type { Cut, Offcut } from '../../src/core/stash/cut.ts'
import type { LaidPiece, Reservation } from '../../src/core/stash/reservation.ts'
import { contents, kept, testGarment, testProject } from './records.ts'

export { contents, kept, testProject } from './records.ts'

/** Records for tests of merging, as small as they can be. */

export function rectangle(x: number, y: number, width: number, height: number): Polygon {
  return [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ]
}

export function laid(piece: string, panel: string, outline: Polygon, copy = 1): LaidPiece {
  return { piece, copy, panel, turn: 0, mirrored: false, x: 0, y: 0, outline }
}

export function testReservation(change: Partial<Reservation> = {}): Reservation {
  return { id: 'r1', project: 'bag', garment: 'g1', pieces: [], clearance: 0, spare: null, ...change }
}

export function testCut(change: Partial<Cut> = {}): Cut {
  return {
    id: 'c1',
    project: 'bag',
    garment: 'g1',
    panel: 'front',
    outline: rectangle(0, 0, 500, 500),
    flaws: [],
    pieces: [],
    reservation: 'r1',
    offcuts: [],
    at: 1,
    ...change,
  }
}

export function testOffcut(change: Partial<Offcut> = {}): Offcut {
  const outline = rectangle(0, 200, 500, 300)
  return { id: 'o1', garment: 'g1', cut: 'c1', outline, flaws: [], kept: true, ...change }
}

export function side(device: string, of: Contents, common: Side['common'] = []): Side {
  return { device, contents: of, common }
}

/** A garment and a project that everything else hangs on. */
export const GROUND = {
  garments: [kept(testGarment(), 1)],
  projects: [kept(testProject(), 1)],
} as const

const time = fc.integer({ min: 1, max: 12 })
const few = <T>(item: fc.Arbitrary<T>) => fc.array(item, { maxLength: 4 })

const piece = fc
  .tuple(
    fc.constantFrom('p1', 'p2', 'p3'),
    fc.constantFrom('front', 'back', 'o1', 'o2', 'o3', 'o4', 'o5'),
    fc.integer({ min: 0, max: 4 }),
    fc.integer({ min: 0, max: 4 }),
  )
  .map(([name, panel, x, y]) => laid(name, panel, rectangle(x * 100, y * 100, 100, 100)))

const garments = few(
  fc.record({ id: fc.constantFrom('g1', 'g2', 'g3'), name: fc.constantFrom('Red', 'Blue'), at: time }),
).map((all) => all.map(({ id, name, at }) => kept(testGarment({ id, name }), at)))
const projects = few(
  fc.record({ id: fc.constantFrom('bag', 'hat'), note: fc.constantFrom('', 'gift'), at: time }),
).map((all) => all.map(({ id, note, at }) => kept(testProject({ id, note }), at)))
const parents = { project: fc.constantFrom('bag', 'hat'), garment: fc.constantFrom('g1', 'g1', 'g2') }
const reservations = few(
  fc.record({
    id: fc.constantFrom('r1', 'r2', 'r3'),
    ...parents,
    pieces: fc.array(piece, { minLength: 1, maxLength: 2 }),
    at: time,
  }),
).map((all) => all.map(({ at, ...change }) => kept(testReservation(change), at)))
/** Facts of a cut that nothing ever changes: two of the same panel, two of offcuts, one of another garment. */
const CUT_OF: Readonly<Record<string, { readonly garment: string; readonly panel: string }>> = {
  c1: { garment: 'g1', panel: 'front' },
  c2: { garment: 'g1', panel: 'front' },
  c3: { garment: 'g1', panel: 'o1' },
  c4: { garment: 'g1', panel: 'o2' },
  c5: { garment: 'g2', panel: 'front' },
}
const cutId = fc.constantFrom(...Object.keys(CUT_OF))
const cuts = few(
  fc.record({ id: cutId, project: parents.project, pieces: fc.array(piece, { maxLength: 1 }), at: time }),
).map((all) =>
  all.map(({ at, ...change }) =>
    kept(testCut({ ...change, ...CUT_OF[change.id], offcuts: [`o${change.id.slice(1)}`] }), at),
  ),
)
const offcuts = few(fc.record({ cut: cutId, kept: fc.boolean(), at: time })).map((all) =>
  all.map(({ cut, kept: isKept, at }) => {
    const garment = CUT_OF[cut]?.garment ?? ''
    return kept(testOffcut({ id: `o${cut.slice(1)}`, cut, garment, kept: isKept }), at)
  }),
)
const removed = few(
  fc.record({
    store: fc.constantFrom('garments' as const, 'projects' as const, 'cuts' as const, 'offcuts' as const),
    n: fc.constantFrom('1', '2', '3', '4', '5'),
    removedAt: time,
  }),
).map((all) =>
  all.map(({ store, n, removedAt }) => ({
    store,
    id: store === 'projects' ? (n < '3' ? 'bag' : 'hat') : `${store[0]}${n}`,
    removedAt,
  })),
)

/** Any records, however little they fit together: doubled, overlapping, without what they hang on. */
export const anyContents: fc.Arbitrary<Contents> = fc
  .tuple(garments, projects, reservations, cuts, offcuts, removed)
  .map(([g, p, r, c, o, gone]) =>
    contents({ garments: g, projects: p, reservations: r, cuts: c, offcuts: o }, gone),
  )

/** What one device may hold: each record once, and all of them one stash. */
export const oneStash: fc.Arbitrary<Contents> = anyContents.map(
  (any) => mergeContents(side('a', any), side('b', NO_CONTENTS)).contents,
)
