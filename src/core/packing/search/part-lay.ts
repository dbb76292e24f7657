import type { Deadline } from '../../base/deadline.ts'
import { bySize, constructLayout, type Recipe } from './construct.ts'
import type { Layout, Spot } from './layout.ts'
import type { Model } from './model.ts'
import { RULES, type Rule } from './rules.ts'
import type { Separation } from './separation.ts'

/** Order by area, needed copies first, into the first region with room. */
function plainRecipe(model: Model): Recipe {
  const order = bySize(model.copies.length, (c) => {
    const kind = model.copies[c]?.kind
    return kind ? kind.area * (kind.item.optional ? 1e-9 : 1) : 0
  })
  return { order, regions: model.problem.regions.map((_, r) => r), rule: RULES[0] as Rule, firstFit: true }
}

/** The lay with every copy added that still finds room in time. */
export function filledUp(model: Model, layout: Layout, deadline: Deadline): Layout {
  return layout.includes(null) ? constructLayout(model, plainRecipe(model), deadline, layout) : layout
}

/** What is left of an overlapping lay when overlapping items go, the one that clears most for its area first. */
export function withoutOverlaps(lay: Separation): Layout {
  const layout: (Spot | null)[] = [...lay.layout()]
  const gone = new Set<number>()
  for (;;) {
    let worst = -1
    let most = 0
    for (let i = 0; i < lay.size; i++) {
      if (gone.has(i)) continue
      const gain = overlapWithRest(lay, i, gone) / lay.copyOf(i).kind.area
      if (gain > most) {
        most = gain
        worst = i
      }
    }
    if (worst < 0) return layout
    gone.add(worst)
    layout[lay.members[worst] as number] = null
  }
}

function overlapWithRest(lay: Separation, i: number, gone: ReadonlySet<number>): number {
  let sum = 0
  for (let j = 0; j < lay.size; j++) if (!gone.has(j)) sum += lay.depthOf(i, j)
  return sum
}
