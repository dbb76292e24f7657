import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { measureFaults, outlineFaults } from '../../../src/core/garments/faults.ts'
import { flawOutlines, orphanedFlaws, shapeOutlines } from '../../../src/core/garments/flaws.ts'
import { FLAW_KINDS, type Garment } from '../../../src/core/garments/garment.ts'
import { KIND_IDS, LABEL_SIZES } from '../../../src/core/garments/kind.ts'
import { kindOf } from '../../../src/core/garments/kinds.ts'
import { panelsOf } from '../../../src/core/garments/panels-of.ts'
import { emptyGarment } from '../../../src/core/garments/starting.ts'
import { ringsArea, ringsIntersection } from '../../../src/core/geometry/clipper.ts'

const FOLDER = new URL('../../../demo-data/garments/', import.meta.url)
const demo = readdirSync(FOLDER)
  .filter((file) => file.endsWith('.json'))
  .map((file) => [file, JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')) as Garment] as const)

describe('the demo garments together', () => {
  const garments = demo.map(([, garment]) => garment)

  it('show every kind of garment', () => {
    expect(new Set(garments.map(({ kind }) => kind))).toEqual(new Set(KIND_IDS))
  })

  it('show every kind and form of flaw but those that come with the garment', () => {
    const flaws = garments.flatMap((garment) => garment.flaws)
    expect(new Set(flaws.map(({ shape }) => shape.form))).toEqual(new Set(['round', 'box', 'line']))
    const builtIn = ['dart', 'pocket']
    expect(new Set(flaws.map(({ kind }) => kind))).toEqual(
      new Set(FLAW_KINDS.filter((kind) => !builtIn.includes(kind))),
    )
  })

  it('show pile both ways, both openings, both faces, a free role', () => {
    const piled = garments.filter(({ cloth }) => cloth.surface === 'one-way')
    expect(new Set(piled.map(({ cloth }) => cloth.pile))).toEqual(new Set(['up', 'down']))
    expect(new Set(garments.map(({ opening }) => opening))).toEqual(new Set(['cut', 'unpicked']))
    expect(new Set(garments.map(({ cloth }) => cloth.faces))).toEqual(new Set([1, 2]))
    expect(garments.some(({ role }) => role !== null)).toBe(true)
  })

  it('have ids of their own, and so have their flaws', () => {
    const ids = garments.flatMap(({ id, flaws }) => [id, ...flaws.map((flaw) => flaw.id)])
    expect(new Set(ids).size).toBe(ids.length)
  })
})

describe.each(demo)('%s', (file, garment) => {
  it('is a garment and nothing else, filed under its id', () => {
    expect(Object.keys(garment)).toEqual(Object.keys(emptyGarment(garment.kind, '')))
    expect(Object.keys(garment.cloth)).toEqual(Object.keys(emptyGarment(garment.kind, '').cloth))
    expect(file).toBe(`${garment.id}.json`)
    expect(garment.labelSize === null || LABEL_SIZES.includes(garment.labelSize)).toBe(true)
    const kind = kindOf(garment.kind)
    expect(Object.keys(garment.measures)).toEqual(kind.measures.map((spec) => spec.id))
    expect(Object.keys(garment.traits)).toEqual(kind.traits.map((trait) => trait.id))
  })

  it('has measures nobody would question and gives panels', () => {
    expect(measureFaults(kindOf(garment.kind), garment.measures, garment.traits)).toEqual([])
    if (garment.outline) expect(outlineFaults(garment.outline)).toEqual([])
    expect(panelsOf(garment).length).toBeGreaterThan(0)
  })

  it('has its flaws on cloth', () => {
    expect(orphanedFlaws(garment)).toEqual([])
    for (const panel of panelsOf(garment)) {
      for (const flaw of garment.flaws.filter((candidate) => candidate.panel === panel.id)) {
        const area = shapeOutlines(flaw.shape)
        expect(ringsArea(ringsIntersection([panel.outline], area))).toBeGreaterThan(
          0.5 * ringsArea(area.slice(0, 1)),
        )
      }
      const spoilt = ringsArea(ringsIntersection([panel.outline], flawOutlines(garment, panel.id)))
      expect(spoilt).toBeLessThan(0.7 * ringsArea([panel.outline]))
    }
  })
})
