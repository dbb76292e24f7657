/** Where on a piece a print shall show: along its middle from side to side, or wherever there is room for it. */
export const MOTIF_PLACES = ['anywhere', 'upper', 'middle', 'lower'] as const
export type MotifPlace = (typeof MOTIF_PLACES)[number]
