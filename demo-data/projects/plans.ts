import type { Project } from '../../src/core/stash/project.ts'

/** Pieces of one role, and the demo garment that they come from. */
export interface Source {
  readonly role: string
  /** Id of the garment's file. */
  readonly garment: string
}

/** A demo project, told without what follows from it. */
export interface Plan extends Pick<Project, 'version' | 'size' | 'colours' | 'newCloth' | 'note'> {
  /** Without the prefix of demo ids. */
  readonly id: string
  readonly name: string
  readonly pattern: string
  /** Reserved in this order. */
  readonly from: readonly Source[]
  /** Pieces whose panel has been cut, with all that is reserved on it; null: nothing yet. */
  readonly cut: { readonly piece: string; readonly at: string } | null
}

export const PLANS: readonly Plan[] = [
  {
    id: 'swing-skirt',
    name: 'Half-circle skirt for the garden party',
    pattern: 'half-circle-skirt',
    version: 'knee',
    size: 'M',
    colours: {},
    newCloth: { pricePerMetre: 14, width: 1400 },
    note: 'Which sheet or curtain has room for six gores?',
    from: [],
    cut: null,
  },
  {
    id: 'two-way-hat',
    name: 'Hat to wear either way out',
    pattern: 'bucket-hat',
    version: 'reversible',
    size: 'M',
    colours: { main: 'blue', lining: 'light' },
    newCloth: { pricePerMetre: 18, width: 1400 },
    note: 'Twill outside, shirt inside. Both are washed.',
    from: [
      { role: 'main', garment: 'indigo-twill-skirt' },
      { role: 'lining', garment: 'checked-flannel-shirt' },
    ],
    cut: null,
  },
  {
    id: 'summer-top',
    name: 'Raglan top for the summer term',
    pattern: 'raglan-top',
    version: 'short',
    size: '110',
    colours: { main: 'grey' },
    newCloth: { pricePerMetre: 12, width: 1500 },
    note: 'The front is cut. The other panel waits for a free evening.',
    from: [{ role: 'main', garment: 'heather-boxy-tee' }],
    cut: { piece: 'front', at: '2026-07-18T10:30:00Z' },
  },
]
