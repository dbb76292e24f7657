import { type Garment, NOT_YET_OWNED } from '../../src/core/garments/garment.ts'
import type { Pattern } from '../../src/core/patterns/pattern.ts'
import { type Contents, NO_CONTENTS, type Removed } from '../../src/core/records/record.ts'
import type { Project } from '../../src/core/stash/project.ts'

export function testGarment(change: Partial<Garment> = {}): Garment {
  return {
    id: 'g1',
    name: 'Striped T-shirt',
    kind: 't-shirt',
    labelSize: 'M',
    measures: { chest: 520 },
    traits: {},
    opening: 'cut',
    outline: null,
    cloth: {
      stretch: { across: 40, along: 20 },
      structure: 'knit',
      surface: 'plain',
      pile: 'down',
      faces: 1,
      fibres: 'cotton',
      colour: 'blue',
    },
    role: null,
    flaws: [],
    ...NOT_YET_OWNED,
    price: 3,
    washed: true,
    ...change,
  }
}

export function testPattern(change: Partial<Pattern> = {}): Pattern {
  return {
    id: 'p1',
    name: 'Bag',
    about: 'A bag.',
    sizes: ['one'],
    versions: [{ id: 'plain', name: 'Plain', pieces: [] }],
    pieces: [],
    clearance: 0,
    cautions: [],
    ...change,
  }
}

export function testProject(change: Partial<Project> = {}): Project {
  return {
    id: 'bag',
    name: 'Market bag',
    pattern: testPattern(),
    version: 'plain',
    size: 'one',
    clearance: 0,
    colours: {},
    blocked: [],
    newCloth: null,
    taken: [],
    finished: false,
    note: '',
    ...change,
  }
}

/** The value as it is stored. */
export function kept<T extends { readonly id: string }>(value: T, changedAt: number) {
  return { id: value.id, value, keptAt: 1, changedAt }
}

export function contents(records: Partial<Contents['records']>, removed: readonly Removed[] = []): Contents {
  return { ...NO_CONTENTS, records: { ...NO_CONTENTS.records, ...records }, removed }
}
