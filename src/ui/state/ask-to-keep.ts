import { isDemoId } from '../../core/records/demo.ts'
import { askToPersist } from '../../storage/persist.ts'

let asked = false

/**
 * To be called when something was stored. The first time it is hers, the browser is asked not to clear it: then there is
 * something to lose, and if the browser asks her in turn she knows what about. Once a visit at most, for what one visit is
 * too little for a browser to promise, a later one may not be. Never for what comes with the app.
 */
export function askToKeep(id: string): void {
  if (asked || isDemoId(id)) return
  asked = true
  askToPersist().catch(() => false)
}
