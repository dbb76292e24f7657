export { type ClothToCut, planRows, type Row, type RowPlan, TORN_EDGE } from './rows.ts'
export { needOfStrip, type StripNeed } from './strip-need.ts'
export { type Tiers, tierNeeds } from './tiers.ts'
