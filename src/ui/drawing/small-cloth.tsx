import { useEffect } from 'preact/hooks'
import type { Garment } from '../../core/garments/index.ts'
import { figuresOf, followFiguresOf } from '../state/cloth-figures.ts'
import { ClothSmall } from './cloth-small.tsx'
import './small-cloth.css'

/** A garment's cloth as it is now, small, in a row that stands by itself. */
export function SmallCloth({ garment }: { garment: Garment }) {
  useEffect(() => followFiguresOf(garment), [garment])
  const figures = figuresOf(garment)
  return <span class="small-cloth">{figures && <ClothSmall panels={figures.panels} />}</span>
}
