import {
  type Figure,
  type Garment,
  kindOf,
  measuresShown,
  startingMeasures,
} from '../../core/garments/index.ts'
import { FigureDrawing } from './figure-drawing.tsx'

/** A kept garment laid flat, as it was measured; a drawn shape as it was drawn. */
export function GarmentDrawing({ garment, label }: { garment: Garment; label?: string }) {
  return <FigureDrawing figure={figureOf(garment)} {...(label !== undefined && { label })} />
}

function figureOf({ kind: id, measures, traits, outline, labelSize }: Garment): Figure {
  if (outline && outline.length > 2) return { shapes: [outline], seams: [], tapes: [] }
  const kind = kindOf(id)
  const told = { ...startingMeasures(kind, labelSize), ...measures }
  return kind.figure(measuresShown(kind, told, traits, {}, labelSize), traits)
}
