/** The face of this folder: which way a piece may lie on a cloth, and how far the cloth stretches. */
export {
  growthPercent,
  neededStretch,
  recoveryPercent,
  type StretchBand,
  stretchBand,
  stretchFromMarks,
} from './stretch.ts'
export {
  type ClothRule,
  type CopySide,
  type NoTurn,
  type PanelCloth,
  turnsOn,
  turnsUpright,
  waysOn,
} from './turns.ts'
