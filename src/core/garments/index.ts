/**
 * The face of this folder without the polygon library, for the page. What opening leaves (panelsOf in panels-of.ts)
 * needs the library and is imported from its own file.
 */
export { isQuestion, type MeasureFault, measureFaults, outlineFaults, questionedMeasures } from './faults.ts'
export { flawOutlines, orphanedFlaws, shapeOutlines } from './flaws.ts'
export type { Cloth, FlawKind, FlawShape, Garment, MarkedFlaw } from './garment.ts'
export { FLAW_KINDS, NOT_YET_OWNED } from './garment.ts'
export type * from './kind.ts'
export { KIND_IDS, LABEL_SIZES } from './kind.ts'
export { kindOf } from './kinds.ts'
export { measuresShown, STAGE_MARGIN } from './shown-figure.ts'
export { emptyGarment, startingMeasures, usualTraits } from './starting.ts'
export { MEASURED_KINDS, type MeasuredKind, TELLING_MEASURES } from './telling.ts'
export { type MadeAs, madeAs, usualMake } from './usual-make.ts'
