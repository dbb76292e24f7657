import type { Mm } from '../../base/units.ts'
import type { Garment } from '../../garments/garment.ts'
import { type MadeAs, madeAs } from '../../garments/usual-make.ts'
import { polygonOriented } from '../../geometry/index.ts'
import type { Polygon } from '../../geometry/types.ts'
import { NOTHING_TAKEN, type Taken } from '../../stash/taken.ts'
import type { Heads } from '../check.ts'
import { layPanels } from '../lay-panels.ts'
import type { LayPanel } from '../lay-problem.ts'

/** Cloth that may become something: all of it is one cloth, told apart from others by its id. */
export interface Donor {
  readonly id: string
  /** What there is of it, heads up. What is reserved already is among the flaws. */
  readonly panels: readonly LayPanel[]
  /** In her own words; empty: unknown. */
  readonly colour: string
  /** How it is made. Absent: nobody knows. */
  readonly made?: MadeAs
  /** In the user's money; null: unknown. */
  readonly price: number | null
}

/** A garment as a donor, less what is taken of it, with `clearance` round what is reserved. */
export function donorOf(garment: Garment, clearance: Mm, taken: Taken = NOTHING_TAKEN): Donor {
  const { id, role, price, cloth } = garment
  const panels = layPanels({ garment, taken }, 'up', clearance)
  const made = madeAs(garment)
  return { id, colour: cloth.colour, made, price, panels: panels.map((panel) => ({ ...panel, cloth: role })) }
}

/** Which ways the heads may point on it: with a pile both are tried. */
export function headingsOn({ panels }: Pick<Donor, 'panels'>): readonly Heads[] {
  return panels.some(({ surface }) => surface === 'one-way') ? ['up', 'down'] : ['up']
}

/** The panels with the heads that way: heads down, each is turned by 180°, as checks write it. */
export function panelsHeld(panels: readonly LayPanel[], heads: Heads): readonly LayPanel[] {
  return heads === 'up' ? panels : panels.map(turnedRound)
}

function turnedRound(panel: LayPanel): LayPanel {
  const round = (polygon: Polygon) => polygonOriented(polygon, { turn: 180, mirrored: false })
  return {
    ...panel,
    outline: round(panel.outline),
    flaws: panel.flaws.map(round),
    ...(panel.motifs
      ? { motifs: panel.motifs.map((motif) => ({ ...motif, outline: round(motif.outline) })) }
      : {}),
  }
}
