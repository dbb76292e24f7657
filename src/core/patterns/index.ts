/**
 * The face of this folder without the polygon library: the page draws and types in patterns with these and stays small.
 * Cut outlines are imported from cut-outline.ts and pieces-of.ts by the code that needs them.
 */
export { elasticCasing } from './casing.ts'
export { circleSkirtRadius } from './circle-skirt.ts'
export { PATTERN_LIMITS } from './limits.ts'
export {
  addPiece,
  addSize,
  emptyPattern,
  removePiece,
  removeSize,
  renameSize,
  withShape,
} from './new-pattern.ts'
export type {
  JoinRule,
  OutlinePoint,
  OutlineShape,
  Pattern,
  PatternPiece,
  PieceShape,
  StripShape,
  Version,
} from './pattern.ts'
export { patternFaults } from './pattern-faults.ts'
export { seamLine } from './seam-line.ts'
export { SEAM_TYPES, type SeamType, type SeamTypeId, seamAllowance } from './seams.ts'
export { shapeFaults } from './shape-faults.ts'
export { NO_STEP, type SizeStep, steppedShape } from './size-step.ts'
export { stripCut, stripFlat, stripsToJoin } from './strip.ts'
export { withWornBeside, wornBeside } from './worn-beside.ts'
