import type { GarmentKind } from '../kind.ts'

/** The id of the one panel that a drawn outline is. */
export const DRAWN_PANEL = 'outline'

/** A shape the user draws or photographs: it has no measures, and its one panel comes from the garment's own outline. */
export const freeOutline: GarmentKind = {
  id: 'free-outline',
  measures: [],
  traits: [],
  less: [],

  figure() {
    const scrap = [
      [0, 0],
      [320, 40],
      [480, 0],
      [500, 260],
      [300, 380],
      [60, 300],
    ] as const
    return { shapes: [scrap], seams: [], tapes: [] }
  },

  drafts() {
    return []
  },
}
