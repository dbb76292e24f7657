export { type CuttingPlan, type CuttingProblem, type CuttingScore, compareScores } from './cutting.ts'
export { cutLengths, USUAL_NODES } from './solve.ts'
