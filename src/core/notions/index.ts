export { notionCautions, type RingStretch, ringStretch } from './cautions.ts'
export { cutLength, isByLength, type Needed, neededNotions, stillNeeded } from './needs.ts'
export {
  COUNT_KINDS,
  LENGTH_KINDS,
  type NeedAmount,
  NOTION_KINDS,
  type Notion,
  type NotionKind,
  type NotionNeed,
} from './notion.ts'
export {
  type NotionCut,
  type NotionPlan,
  planNotions,
  SHORTEST_END,
  serves,
  type ToBuy,
  type WantedColours,
} from './plan.ts'
export { withCutBack, withoutCut } from './take.ts'
