import { checkPacking } from '../packing/check/check-packing.ts'
import type { Item, Placement, Region } from '../packing/problem.ts'
import type { LayPlacement } from './lay.ts'
import type { Source, Translation } from './translate.ts'

/*
 * A lay of this or a like problem in the terms of packing. A piece may be several items: one for each side of a pair, one
 * for the copy that shows a print. Which copy is which is only a number, so each placement goes to whichever item can lie
 * there, its own first.
 */

type Place = Omit<Placement, 'item'>

/** The lay's placements as far as its pieces and panels are known here, each copy once. */
export function placementsFrom(translation: Translation, lay: readonly LayPlacement[]): readonly Placement[] {
  const { panels, sources } = translation
  const pieces = [...new Set(sources.map(({ piece }) => piece.id))]
  return pieces.flatMap((id) => {
    const places = lay.flatMap(({ piece, panel, ...where }): readonly Place[] => {
      const region = panels.findIndex((each) => each.id === panel)
      return piece === id && region >= 0 ? [{ ...where, region }] : []
    })
    const items = sources.flatMap(({ piece }, item) => (piece.id === id ? [item] : []))
    const shares = new Shares(translation, items, places)
    return items.flatMap((item) => numbered(translation, item, shares.of(item)))
  })
}

/** Which places go to which of a piece's items. */
class Shares {
  readonly #translation: Translation
  readonly #items: readonly number[]
  readonly #places: readonly Place[]
  readonly #taken: Map<number, Place[]>

  constructor(translation: Translation, items: readonly number[], places: readonly Place[]) {
    this.#translation = translation
    this.#items = items
    this.#places = places
    this.#taken = new Map(items.map((item) => [item, []]))
    const left = this.#places.filter((place) => !this.#seat(place, new Set()))
    // Where it cannot lie it may still be a beginning.
    for (const place of left) {
      const item = this.#inOrder(place).find((each) => this.#hasRoom(each))
      if (item !== undefined) this.of(item).push(place)
    }
  }

  of(item: number): Place[] {
    return this.#taken.get(item) as Place[]
  }

  /** Gives the place to an item, moving others on where that makes room (Kuhn's matching, an item having several seats). */
  #seat(place: Place, seen: Set<number>): boolean {
    for (const item of this.#inOrder(place)) {
      if (seen.has(item) || !this.#serves(place, item)) continue
      seen.add(item)
      const taken = this.of(item)
      const moved = this.#hasRoom(item) ? null : taken.find((other) => this.#seat(other, seen))
      if (moved === undefined) continue
      if (moved) taken.splice(taken.indexOf(moved), 1)
      taken.push(place)
      return true
    }
    return false
  }

  #hasRoom(item: number): boolean {
    return this.of(item).length < (this.#translation.packing.items[item] as Item).copies
  }

  #inOrder({ copy }: Place): readonly number[] {
    const own = (item: number) => Number(isOwn(this.#translation, item, copy))
    return [...this.#items].sort((a, b) => own(b) - own(a))
  }

  #serves(place: Place, item: number): boolean {
    return this.#items.length === 1 || liesThere(this.#translation, { ...place, item, copy: 0 })
  }
}

/** True if copies of this number are the item's. */
function isOwn({ packing, sources }: Translation, item: number, copy: number): boolean {
  const { firstCopy } = sources[item] as Source
  return copy >= firstCopy && copy < firstCopy + (packing.items[item] as Item).copies
}

/** True if the copy by itself keeps every rule there. */
export function liesThere({ packing }: Translation, placement: Placement): boolean {
  const item = packing.items[placement.item] as Item
  const alone = { ...item, copies: 1, ways: [item.ways[placement.region] ?? []] }
  const problem = { ...packing, regions: [packing.regions[placement.region] as Region], items: [alone] }
  return checkPacking(problem, [{ ...placement, item: 0, copy: 0, region: 0 }], []).length === 0
}

/** The places as placements of the item, by their own numbers where those are the item's and free. */
function numbered(translation: Translation, item: number, places: readonly Place[]): readonly Placement[] {
  const { firstCopy } = translation.sources[item] as Source
  const { copies } = translation.packing.items[item] as Item
  const free = new Set(Array.from({ length: copies }, (_, copy) => copy))
  const taken = new Map<Place, number>()
  for (const place of places) {
    const copy = place.copy - firstCopy
    if (isOwn(translation, item, place.copy) && free.delete(copy)) taken.set(place, copy)
  }
  return places.map((place): Placement => {
    const copy = taken.get(place) ?? Math.min(...free)
    free.delete(copy)
    return { ...place, item, copy }
  })
}
