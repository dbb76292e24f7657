import type { Settling } from './state.ts'

/**
 * Lists of photos that came from two devices: without those that one of them removed, in the order in which they were
 * taken up.
 */
export function settlePhotos(settling: Settling, garments: readonly string[]): void {
  const keptAt = new Map(settling.kept('photos').map((photo) => [photo.id, photo.keptAt]))
  const listed = settling.kept('garments').filter(({ id }) => garments.includes(id))
  for (const { id, value } of listed) {
    const there = value.photos.filter((photo) => !settling.isGone({ store: 'photos', id: photo }))
    // One that cannot be read goes last.
    const at = (photo: string) => keptAt.get(photo) ?? Number.POSITIVE_INFINITY
    const order = (a: string, b: string) => (at(a) === at(b) ? (a < b ? -1 : 1) : at(a) < at(b) ? -1 : 1)
    settling.setPhotos(id, there.toSorted(order))
  }
}
