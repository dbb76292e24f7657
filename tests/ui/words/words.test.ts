import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { emptyGarment, KIND_IDS, kindOf } from '../../../src/core/garments/index.ts'
import { panelsOf } from '../../../src/core/garments/panels-of.ts'
import type { Pattern } from '../../../src/core/patterns/pattern.ts'
import { words } from '../../../src/ui/words/words.ts'

const PATTERNS = new URL('../../../demo-data/patterns/', import.meta.url)

describe.each(KIND_IDS)('the words for a garment of kind %s', (id) => {
  const kind = kindOf(id)

  it('name every measure and say where the tape goes', () => {
    for (const { id: measure } of kind.measures) {
      expect(words.garments.measures[measure], measure).toMatchObject({
        name: expect.stringMatching(/\S/),
        how: expect.stringMatching(/\.$/),
      })
    }
  })

  it('name every trait', () => {
    for (const trait of kind.traits) expect(words.garments.traits[trait.id]?.name, trait.id).toBeTruthy()
  })

  it('name every panel, however it is made', () => {
    const usual = emptyGarment(id, 'a')
    const made = [
      usual.traits,
      ...kind.traits.map((trait) => ({ ...usual.traits, [trait.id]: !trait.usual })),
    ]
    for (const traits of made) {
      for (const panel of panelsOf({ ...usual, traits })) {
        expect(words.garments.panels[panel.id], panel.id).toBeTruthy()
      }
    }
  })
})

describe.each(readdirSync(PATTERNS))('the words for %s', (file) => {
  const pattern: Pattern = JSON.parse(readFileSync(new URL(file, PATTERNS), 'utf8'))

  it('say every caution it asks for', () => {
    for (const caution of pattern.cautions) expect(words.cautions[caution], caution).toBeTruthy()
  })

  it('name every cloth role it has', () => {
    for (const { role } of pattern.pieces) expect(words.check.roleNames[role], role).toBeTruthy()
  })
})

it('cautions on children and burning defer to local rules', () => {
  for (const id of ['child-cords', 'small-parts', 'sleepwear-flame']) {
    expect(words.cautions[id]).toMatch(/rules where you live/)
  }
})
