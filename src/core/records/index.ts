/** The face of this folder without the polygon library. Merging needs it and is imported from merge.ts. */
export type { Difference } from './differences.ts'
export type { Conflict, Merge, Side } from './merge.ts'
export * from './record.ts'
export type { Settlement } from './settle/settle.ts'
