import { useSignal } from '@preact/signals'
import type { ComponentChildren, VNode } from 'preact'
import { useEffect, useLayoutEffect, useRef } from 'preact/hooks'
import './long-list.css'
import { GUESS, type ListPlace, newPlace } from './list-place.ts'
import { type RowHeights, rowsBetween } from './row-heights.ts'

/** Rows drawn beyond what is seen, above and below: for a quick thumb, and so that Tab finds the next one. */
const BEYOND = 4
/** A screen that is not laid out yet is so high. */
const SCREEN = 800

interface LongListProps<T> {
  readonly items: readonly T[]
  readonly keyOf: (item: T) => string
  /** As long as it is the same function, the same item is drawn once; what it shows beyond itself it must follow by signals. */
  readonly draw: (item: T) => ComponentChildren
  /** Told of the items drawn, whenever they change. */
  readonly onShown?: (items: readonly T[]) => void
  /** Absent: the list begins at its top whenever it comes. */
  readonly place?: ListPlace
}

/**
 * A list of any length in a screen that scrolls, of which only what is seen is drawn. To a screen reader each row says
 * which of how many it is. A row with the focus stays, wherever the list is scrolled to.
 */
export function LongList<T>({ items, keyOf, draw, onShown, place }: LongListProps<T>) {
  const list = useRef<HTMLUListElement>(null)
  const { heights } = useRef(place ?? newPlace()).current
  const cells = useRef<Cells<T>>({ draw, cells: new Map() })
  const range = useSignal<readonly [number, number]>([0, Math.ceil(SCREEN / GUESS)])
  const focused = useSignal<string | null>(null)
  const measured = useSignal(0)
  void measured.value
  const keys = items.map(keyOf)
  const starts = heights.starts(keys)
  const rows = rowsDrawn(range.value, keys, focused.value)
  cells.current = { draw, cells: cellsOf(rows, items, keys, draw, cells.current) }
  const watch = useRef<ListWatch>({ starts, onSeen: () => {}, onMeasured: () => {}, heights }).current
  watch.starts = starts
  watch.onSeen = (now) => {
    if (now[0] !== range.value[0] || now[1] !== range.value[1]) range.value = now
  }
  watch.onMeasured = () => {
    measured.value += 1
  }
  const follow = useRef<Following | null>(null)
  useLayoutEffect(() => {
    follow.current = list.current && followList(list.current, watch, place)
    return () => follow.current?.end()
  }, [])
  useLayoutEffect(() => follow.current?.look())
  useEffect(() => onShown?.(rows.map((k) => items[k] as T)), [rows.join(), items])
  return (
    <ul
      ref={list}
      class="long-list"
      style={{ height: `${starts[keys.length]}px` }}
      onFocusIn={({ target }) => (focused.value = keyAt(target))}
      onFocusOut={() => (focused.value = null)}
    >
      {rows.map((k) => (
        <li
          key={keys[k]}
          data-key={keys[k]}
          data-row={k}
          aria-setsize={items.length}
          aria-posinset={k + 1}
          style={{ top: `${starts[k]}px` }}
        >
          {cells.current.cells.get(keys[k] as string)?.drawn}
        </li>
      ))}
    </ul>
  )
}

interface Cell<T> {
  readonly item: T
  readonly drawn: VNode
}

interface Cells<T> {
  readonly draw: (item: T) => ComponentChildren
  readonly cells: ReadonlyMap<string, Cell<T>>
}

/** What stands in the rows; the same object for the same item, which is not drawn anew then. */
function cellsOf<T>(
  rows: readonly number[],
  items: readonly T[],
  keys: readonly string[],
  draw: (item: T) => ComponentChildren,
  before: Cells<T>,
): ReadonlyMap<string, Cell<T>> {
  return new Map(
    rows.map((k) => {
      const [item, key] = [items[k] as T, keys[k] as string]
      const known = before.draw === draw ? before.cells.get(key) : undefined
      return [key, known?.item === item ? known : { item, drawn: <div>{draw(item)}</div> }]
    }),
  )
}

function keyAt(target: EventTarget | null): string | null {
  return target instanceof Element ? (target.closest<HTMLElement>('[data-key]')?.dataset.key ?? null) : null
}

function rowsDrawn(
  [from, to]: readonly [number, number],
  keys: readonly string[],
  focused: string | null,
): readonly number[] {
  const rows = Array.from({ length: Math.max(0, Math.min(to, keys.length) - from) }, (_, k) => from + k)
  const kept = focused === null ? -1 : keys.indexOf(focused)
  return kept < 0 || rows.includes(kept) ? rows : [...rows, kept].sort((a, b) => a - b)
}

function scrollerOf(list: HTMLElement): HTMLElement | null {
  return list.closest<HTMLElement>('.screen-scroll')
}

/** Where the list's top lies, seen from that of what is seen of the screen. */
function topOf(list: HTMLElement, scroller: HTMLElement): number {
  return list.getBoundingClientRect().top - scroller.getBoundingClientRect().top
}

/** What the list's following must know of it, as it was drawn last. */
interface ListWatch {
  starts: Float64Array
  readonly heights: RowHeights
  onSeen: (rows: readonly [number, number]) => void
  onMeasured: () => void
}

interface Following {
  /** Looks which rows are seen, and sees to it that those that came are measured. */
  look(): void
  end(): void
}

/** Follows where the screen is scrolled to, its size and that of the rows. Asks for the layout only when it stands already. */
function followList(
  list: HTMLUListElement,
  watch: ListWatch,
  place: ListPlace | undefined,
): Following | null {
  const scroller = scrollerOf(list)
  if (!scroller) return null
  if (place) scroller.scrollTop = place.top
  let [above, height] = [place?.top ?? 0, SCREEN]
  const seen = () => watch.onSeen(rowsBetween(watch.starts, above, above + height, BEYOND))
  const lookAnew = () => {
    above = -topOf(list, scroller)
    height = scroller.clientHeight
    seen()
  }
  const onScroll = () => {
    if (place) place.top = scroller.scrollTop
    lookAnew()
  }
  const watched = new Set<Element>()
  const sizes = new ResizeObserver((entries) => {
    if (note(entries, watch, -topOf(list, scroller), scroller)) watch.onMeasured()
    lookAnew()
  })
  scroller.addEventListener('scroll', onScroll, { passive: true })
  sizes.observe(scroller)
  return {
    look: () => {
      for (const row of watched) if (row.parentNode !== list) unwatch(row)
      for (const row of list.children) {
        if (watched.has(row)) continue
        watched.add(row)
        sizes.observe(row)
      }
      seen()
    },
    end: () => {
      scroller.removeEventListener('scroll', onScroll)
      sizes.disconnect()
    },
  }
  function unwatch(row: Element): void {
    watched.delete(row)
    sizes.unobserve(row)
  }
}

/** Less is a matter of rounding, pixels. */
const SAME = 0.5

/**
 * Notes how high rows came out; true if any differs from what it was taken for. What lies above the screen and came out
 * otherwise shifts nothing that is seen.
 */
function note(
  entries: readonly ResizeObserverEntry[],
  { heights, starts }: ListWatch,
  above: number,
  scroller: HTMLElement,
): boolean {
  let [shift, isNew] = [0, false]
  for (const { target, borderBoxSize } of entries) {
    const { key, row } = (target as HTMLElement).dataset
    const height = borderBoxSize[0]?.blockSize
    if (key === undefined || !height) continue
    const off = heights.note(key, height)
    if (Math.abs(off) < SAME) continue
    isNew = true
    if ((starts[Number(row)] as number) + height <= above) shift += off
  }
  if (shift !== 0) scroller.scrollTop += shift
  return isNew
}
