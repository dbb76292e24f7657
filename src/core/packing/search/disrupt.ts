import type { Random } from '../../base/random.ts'
import { STRIP } from '../config.ts'
import type { Option } from './option.ts'
import type { Separation } from './separation.ts'

/** Members that are the biggest making up most of the area, biggest first. */
function largeMembers(lay: Separation): number[] {
  const members = Array.from({ length: lay.size }, (_, i) => i)
  const areaOf = (i: number) => lay.copyOf(i).kind.area
  members.sort((a, b) => areaOf(b) - areaOf(a))
  const all = members.reduce((sum, i) => sum + areaOf(i), 0)
  let sum = 0
  return members.filter((i) => {
    const large = sum < all * STRIP.large
    sum += areaOf(i)
    return large
  })
}

/** Swaps two large items that are not alike, so that the search leaves a lay it cannot repair. */
export function swapLarge(lay: Separation, random: Random): void {
  const large = largeMembers(lay)
  for (let attempt = 0; attempt < 20 && large.length > 1; attempt++) {
    const i = large[Math.floor(random() * large.length)] as number
    const j = large[Math.floor(random() * large.length)] as number
    if (lay.copyOf(i).kind === lay.copyOf(j).kind) continue
    if (exchange(lay, i, j)) return
  }
}

/** Each takes the middle of the other's box, held as it was, if it may be held so there. */
function exchange(lay: Separation, i: number, j: number): boolean {
  const a = lay.options[i] as Option
  const b = lay.options[j] as Option
  const forI = optionLike(lay, i, b.region, a)
  const forJ = optionLike(lay, j, a.region, b)
  if (!forI || !forJ) return false
  const middleI = middle(a, lay.x[i] as number, lay.y[i] as number)
  const middleJ = middle(b, lay.x[j] as number, lay.y[j] as number)
  putMiddle(lay, i, forI, middleJ)
  putMiddle(lay, j, forJ, middleI)
  return true
}

function optionLike(lay: Separation, i: number, region: number, like: Option): Option | undefined {
  const options = lay.copyOf(i).kind.optionsIn(region)
  return options.find((option) => option.shape === like.shape) ?? options[0]
}

function middle({ shape: { box } }: Option, x: number, y: number): readonly [number, number] {
  return [x + (box.minX + box.maxX) / 2, y + (box.minY + box.maxY) / 2]
}

function putMiddle(lay: Separation, i: number, option: Option, [mx, my]: readonly [number, number]): void {
  const { box } = option.shape
  lay.putInside(i, option, mx - (box.minX + box.maxX) / 2, my - (box.minY + box.maxY) / 2)
}
