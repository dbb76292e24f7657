import type { Mm } from '../../src/core/base/units.ts'
import type { NeedAmount, NotionNeed } from '../../src/core/notions/notion.ts'
import type { Pattern } from '../../src/core/patterns/pattern.ts'

/** What an elastic is sewn together over, inside 12 to 25 mm (common practice). */
const OVERLAP: Mm = 20

/** One figure a size. */
export function bySize<Size extends string>(
  sizes: readonly Size[],
  of: (size: Size) => number,
): Readonly<Record<string, number>> {
  return Object.fromEntries(sizes.map((size) => [size, of(size)]))
}

/** So many in every size. */
export function many(sizes: Pattern['sizes'], count: number): NeedAmount {
  return { form: 'count', count: bySize(sizes, () => count) }
}

/** A ring of elastic round a body girth, shorter than that by the ratio; `passes` goes through it when it is put on. */
export function elasticRing<Size extends string>(
  sizes: readonly Size[],
  need: Pick<NotionNeed, 'id' | 'name' | 'width'>,
  ratio: number,
  girth: (size: Size) => Mm,
  passes: (size: Size) => Mm,
): NotionNeed {
  const edge = bySize(sizes, girth)
  return {
    ...need,
    kind: 'elastic',
    amount: { form: 'formula', each: 1, edge, ratio, extra: OVERLAP },
    passes: bySize(sizes, passes),
  }
}
