import type { Outcomes } from '../state/outcomes.ts'
import { remedyWords } from './en/remedies.ts'
import { words } from './words.ts'

const texts = remedyWords

/** How the search for remedies stands. Nothing is said to help or to be no help that has not been solved. */
export function remediesStatus(state: Outcomes<unknown>['state'], saving: number, inVain: number): string {
  if (state === 'failed') return words.verdict.unable
  if (state === 'running') return saving > 0 ? texts.lookingOn(saving) : texts.looking
  if (saving > 0) return texts.found(saving)
  if (state === 'stopped') return texts.noneYet(inVain)
  return inVain > 0 ? texts.none(inVain) : texts.nothingToTry
}
