import type { Mm } from '../base/units.ts'
import { flawOutlines } from '../garments/flaws.ts'
import type { HemmedPanel } from '../garments/opening/keep-hems.ts'
import { panelsKeepingHems, panelsOf } from '../garments/panels-of.ts'
import { ringsOffset } from '../geometry/clipper.ts'
import { polygonArea, polygonCounterClockwise, polygonOriented } from '../geometry/index.ts'
import type { Polygon } from '../geometry/types.ts'
import { groundOf } from '../stash/ground.ts'
import { NOTHING_TAKEN, type Taken } from '../stash/taken.ts'
import type { CheckQuestion, Heads } from './check.ts'
import type { LayPanel } from './lay-problem.ts'

/** What of a question decides its panels. */
export type PanelQuestion = Pick<CheckQuestion, 'garment' | 'ownHem' | 'motif' | 'taken'>

/** Id of the only motif there is. */
export const MOTIF = 'print'

/**
 * The garment's panels as the solver takes them, less what is taken of it: panels that were cut give way to their offcuts,
 * and reserved places, with `clearance` round them, are flaws. Heads down: turned by 180°, so that the heads are up in
 * the problem.
 */
export function layPanels(question: PanelQuestion, heads: Heads, clearance: Mm): readonly LayPanel[] {
  const { garment, motif, taken = NOTHING_TAKEN } = question
  const held = (polygon: Polygon) =>
    heads === 'up' ? polygon : polygonOriented(polygon, { turn: 180, mirrored: false })
  const up = motif?.anyWayUp ? {} : { up: heads === 'up' ? 0 : 180 }
  const { stretch, surface, faces } = garment.cloth
  return panelsNow(question).map((panel) => ({
    id: panel.id,
    outline: held(panel.outline),
    flaws: [...panel.flaws, ...keptOff(panel, taken, clearance)].map(held),
    stretch,
    surface,
    faces,
    // The check asks by role already, so the cloth as such matches every piece asked.
    cloth: null,
    ...(panel.hems.length > 0 ? { finished: panel.hems, finishedDepth: panel.hemDepth } : {}),
    ...(motif?.panel === panel.id ? { motifs: [{ id: MOTIF, outline: held(motif.outline), ...up }] } : {}),
  }))
}

interface PanelNow extends Pick<HemmedPanel, 'id' | 'outline' | 'hems' | 'hemDepth'> {
  readonly flaws: readonly Polygon[]
  /** The panel with its hems left on, where reserved pieces may have taken them. */
  readonly hemmed: HemmedPanel | null
}

function panelsNow({ garment, ownHem = [], taken = NOTHING_TAKEN }: PanelQuestion): readonly PanelNow[] {
  // Only who keeps hems, or must keep off those that are promised, need know of them.
  const keeping = ownHem.length > 0 || taken.reserved.length > 0 ? panelsKeepingHems(garment) : []
  const hemmedOf = (id: string) => keeping.find((panel) => panel.id === id) ?? null
  const whole = ownHem.length > 0 ? keeping : panelsOf(garment).map(withoutHems)
  return [
    ...whole
      .filter(({ id }) => !taken.cut.includes(id))
      .map(({ id, outline, hems, hemDepth }) => ({
        id,
        outline,
        hems,
        hemDepth,
        flaws: flawOutlines(garment, id),
        hemmed: hemmedOf(id),
      })),
    ...taken.offcuts.map(({ id, outline, flaws }) => ({
      ...withoutHems({ id, outline }),
      flaws: [...flaws, ...flawOutlines(garment, id)],
      hemmed: null,
    })),
  ]
}

function withoutHems<Panel>(
  panel: Panel,
): Panel & { readonly hems: readonly number[]; readonly hemDepth: Mm } {
  return { ...panel, hems: [], hemDepth: 0 }
}

function keptOff({ id, hemmed }: PanelNow, taken: Taken, clearance: Mm): readonly Polygon[] {
  return taken.reserved
    .filter(({ panel }) => panel === id)
    .flatMap(({ outline }) => groundOf(outline, hemmed))
    .flatMap((outline) => grown(outline, clearance))
}

function grown(outline: Polygon, clearance: Mm): readonly Polygon[] {
  if (clearance <= 0) return [outline]
  const rings = ringsOffset([polygonCounterClockwise(outline)], clearance, 'round')
  return rings.filter((ring) => polygonArea(ring) > 0)
}
