/** The face of packing to the rest of the core, the workers and the terminal. */
export type { PackingAnswer, Refutation } from './answer.ts'
export type { CopyRef, Item, PackingProblem, Placement, Region } from './problem.ts'
export { type PackingControl, type PartialPacking, solve } from './solve.ts'
export { type SpareControl, spare } from './spare.ts'
