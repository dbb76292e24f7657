import type { Cut } from '../../stash/cut.ts'
import type { Kept } from '../record.ts'
import type { Settling } from './state.ts'

/**
 * Cloth is cut once. Of two cuts of one panel the later stays; the other goes with its offcuts and with what was cut
 * out of those, so that nothing of it is half there. Panels of the garment come before offcuts of them.
 */
export function dropSecondCuts(settling: Settling): void {
  let pair = doubledCut(settling)
  while (pair) {
    const [stays, goes] = pair
    settling.settlements.push({
      store: 'cuts',
      id: goes.id,
      what: 'cut-twice',
      by: { store: 'cuts', id: stays.id },
    })
    removeCut(settling, goes.id)
    pair = doubledCut(settling)
  }
}

/** Two cuts of one panel, the later first; of the panel that is the least often cut out of another. */
function doubledCut(settling: Settling): readonly [Kept<Cut>, Kept<Cut>] | null {
  const latest = new Map<string, Kept<Cut>>()
  let found: readonly [Kept<Cut>, Kept<Cut>] | null = null
  for (const cut of settling.kept('cuts')) {
    const panel = JSON.stringify([cut.value.garment, cut.value.panel])
    const later = latest.get(panel)
    if (!later) latest.set(panel, cut)
    else if (!found || depth(settling, cut.value) < depth(settling, found[1].value)) found = [later, cut]
  }
  return found
}

/** How many cuts lie above this one: its panel is an offcut of an offcut of … */
function depth(settling: Settling, cut: Cut): number {
  const seen = new Set<string>()
  let panel = cut.panel
  while (!seen.has(panel)) {
    seen.add(panel)
    const offcut = settling.known('offcuts', panel)
    const above = offcut && settling.known('cuts', offcut.cut)
    if (!above) break
    panel = above.panel
  }
  return seen.size
}

function removeCut(settling: Settling, id: string): void {
  if (!settling.has({ store: 'cuts', id })) return
  settling.remove({ store: 'cuts', id })
  for (const offcut of settling.kept('offcuts')) {
    if (offcut.value.cut !== id) continue
    settling.remove({ store: 'offcuts', id: offcut.id })
    for (const cut of settling.kept('cuts')) if (cut.value.panel === offcut.id) removeCut(settling, cut.id)
  }
}
