import { outcomeSearch } from './outcomes.ts'

/** A dozen measures at most, most of them decided at once. */
const SECONDS = 8

/** Which measures the answer hangs on, as they are solved. */
export const bindingMeasures = outcomeSearch('measures', SECONDS, ({ measure }) => measure)
