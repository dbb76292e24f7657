import type { Garment } from '../../../core/garments/index.ts'

/** True of cloth that was never a garment: nothing is to be seen of it that its one panel does not show. */
export function isFlatCloth({ kind }: Garment): boolean {
  return kind === 'cloth' || kind === 'free-outline'
}
