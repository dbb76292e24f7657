import type { NeedAmount, NotionNeed } from './notion.ts'

/** What becomes of the needs' figures when a pattern's sizes change. */

/** The needs when a size has another name. */
export function renamedInNeeds(
  needs: readonly NotionNeed[],
  from: string,
  to: string,
): readonly NotionNeed[] {
  return needs.map((need) => withSizes(need, (bySize) => renamed(bySize, from, to)))
}

/** The needs with a new size's figures taken over from another size. */
export function copiedInNeeds(needs: readonly NotionNeed[], from: string, to: string): readonly NotionNeed[] {
  return needs.map((need) =>
    withSizes(need, (bySize) => (bySize[from] === undefined ? bySize : { ...bySize, [to]: bySize[from] })),
  )
}

/** The needs without a size's figures. */
export function removedInNeeds(needs: readonly NotionNeed[], size: string): readonly NotionNeed[] {
  return needs.map((need) =>
    withSizes(need, (bySize) => Object.fromEntries(Object.entries(bySize).filter(([name]) => name !== size))),
  )
}

type BySize = Readonly<Record<string, number>>

function withSizes(need: NotionNeed, change: (bySize: BySize) => BySize): NotionNeed {
  const { amount, passes } = need
  const changed: NeedAmount =
    amount.form === 'count'
      ? { ...amount, count: change(amount.count) }
      : amount.form === 'table'
        ? { ...amount, length: change(amount.length) }
        : { ...amount, edge: change(amount.edge) }
  return { ...need, amount: changed, ...(passes && { passes: change(passes) }) }
}

function renamed(bySize: BySize, from: string, to: string): BySize {
  return Object.fromEntries(Object.entries(bySize).map(([name, value]) => [name === from ? to : name, value]))
}
