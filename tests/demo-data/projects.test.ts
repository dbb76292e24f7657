import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Garment } from '../../src/core/garments/index.ts'
import { ringsArea, ringsDifference, ringsOffset, ringsUnion } from '../../src/core/geometry/clipper.ts'
import { polygonArea } from '../../src/core/geometry/polygon.ts'
import { polygonIsSimple } from '../../src/core/geometry/simple.ts'
import type { Polygon } from '../../src/core/geometry/types.ts'
import { piecesOf } from '../../src/core/patterns/pieces-of.ts'
import { isDemoId } from '../../src/core/records/demo.ts'
import { clothOf } from '../../src/core/stash/cloth-of.ts'
import { overlapsOf } from '../../src/core/stash/overlaps.ts'
import { projectProgress, projectStage } from '../../src/core/stash/progress.ts'
import { reservationFaults } from '../../src/core/stash/reservation-faults.ts'
import { SLIVER_WIDTH } from '../../src/core/stash/sliver.ts'
import { readDemo } from '../../src/readers/model/demo.ts'

const FOLDER = new URL('../../demo-data/', import.meta.url)

function json(file: string) {
  return JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8'))
}

function all(folder: string): unknown[] {
  return readdirSync(new URL(folder, FOLDER)).map((file) => json(`${folder}/${file}`))
}

const made = json('projects/stash.json')
const read = readDemo({ garments: all('garments'), notions: all('notions'), made })
const demo = read.ok ? read.value : null
const { garments, notions, projects, ...records } = demo ?? {
  garments: [],
  notions: [],
  projects: [],
  reservations: [],
  cuts: [],
  offcuts: [],
}
const garmentOf = (id: string) => garments.find((garment) => garment.id === id) as Garment

describe('the demo', () => {
  it('passes every gate, the projects unchanged', () => {
    expect(read).toMatchObject({ ok: true })
    expect({ projects, ...records }).toEqual(made)
  })

  it('has thirty garments or more, notions, and three projects', () => {
    expect(garments.length).toBeGreaterThanOrEqual(30)
    expect(notions.length).toBeGreaterThan(0)
    expect(projects).toHaveLength(3)
  })

  it('has ids that are its own, each once', () => {
    for (const list of [garments, notions, projects, ...Object.values(records)]) {
      const ids = list.map(({ id }) => id)
      expect(ids.filter((id) => !isDemoId(id))).toEqual([])
      expect(new Set(ids).size).toBe(ids.length)
    }
  })

  it('names the field of what is wrong', () => {
    const broken = { ...made, cuts: [{ ...made.cuts[0], at: 'today' }], offcuts: null }
    const answer = readDemo({ garments: [], notions: [], made: broken })
    expect(answer).toMatchObject({ ok: false, faults: [{ field: 'cuts[0].at' }, { field: 'offcuts' }] })
  })
})

describe('the demo projects', () => {
  it('are planned, reserved and being cut', () => {
    expect(projects.map((project) => projectStage(project, records))).toEqual([
      'planned',
      'reserved',
      'cutting',
    ])
  })

  it('are of shipped patterns as they are shipped', () => {
    for (const { pattern } of projects) expect(pattern).toEqual(json(`patterns/${pattern.id}.json`))
  })

  it('take cloth of two donors for the reserved one', () => {
    const reserved = projectProgress(projects[1] as (typeof projects)[number], records)
    expect(new Set(reserved.map(({ garment }) => garment)).size).toBe(2)
  })

  it('have every copy of the one being cut either cut or reserved', () => {
    const states = projectProgress(projects[2] as (typeof projects)[number], records).map(
      ({ state }) => state,
    )
    expect(new Set(states)).toEqual(new Set(['cut', 'reserved']))
  })

  it('lie as their patterns draw them: areas of outlines are those of the pieces', () => {
    for (const { project: id, pieces } of [...records.reservations, ...records.cuts]) {
      const project = projects.find((one) => one.id === id) as (typeof projects)[number]
      const inSize = piecesOf(project.pattern, project.version, project.size)
      for (const { piece, outline } of pieces) {
        const drawn = inSize.ok ? inSize.value.find((one) => one.piece.id === piece) : undefined
        expect(polygonIsSimple(outline)).toBe(true)
        // A thousandth of a millimetre round a metre or two of outline.
        expect(Math.abs(polygonArea(outline) - polygonArea(drawn?.outline ?? []))).toBeLessThan(2)
      }
    }
  })
})

describe('the cloth of the demo projects', () => {
  it.each(records.reservations.map((one) => [one.id, one] as const))(
    'has the places of %s',
    (_, reservation) => {
      expect(reservation.pieces.length).toBeGreaterThan(0)
      expect(reservationFaults(reservation, clothOf(garmentOf(reservation.garment), records))).toEqual([])
    },
  )

  it('is promised once', () => {
    expect(overlapsOf(records.reservations)).toEqual([])
  })

  it.each(records.cuts.map((cut) => [cut.id, cut] as const))('adds up where %s was made', (_, cut) => {
    const garment = garmentOf(cut.garment)
    const panel = clothOf(garment, { ...records, cuts: [] }).panels.find(({ id }) => id === cut.panel)
    const offcuts = records.offcuts.filter((one) => one.cut === cut.id)
    expect(offcuts.map(({ id }) => id)).toEqual(cut.offcuts)
    expect(offcuts.length).toBeGreaterThan(0)
    // The panel as the garment opens into it, its hem let down.
    expect(Math.abs(polygonArea(cut.outline) - polygonArea(panel?.outline ?? []))).toBeLessThan(2)

    const parts = [...cut.pieces, ...offcuts].map(({ outline }) => outline as Polygon)
    for (const outline of parts) expect(polygonIsSimple(outline)).toBe(true)
    // No hole in an offcut here, and no flaw on the panel: outlines tell all.
    expect([cut, ...offcuts].flatMap(({ flaws }) => flaws)).toEqual([])
    const panelArea = polygonArea(cut.outline)
    const areas = parts.reduce((sum, outline) => sum + polygonArea(outline), 0)
    const slivers = ringsDifference([cut.outline], ringsUnion(parts))
    // Parts that overlap or reach beyond the panel would make too much of it.
    expect(Math.abs(areas + ringsArea(slivers) - panelArea)).toBeLessThan(2)
    expect(ringsOffset(slivers, -(SLIVER_WIDTH / 2 + 0.2), 'round')).toEqual([])
  })

  it('has nothing reserved or cut twice', () => {
    const copies = [...records.reservations, ...records.cuts].flatMap(({ project, pieces }) =>
      pieces.map(({ piece, copy }) => `${project} ${piece} ${copy}`),
    )
    expect(new Set(copies).size).toBe(copies.length)
  })
})
