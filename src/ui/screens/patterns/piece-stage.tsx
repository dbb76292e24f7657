import { type PieceShape, seamLine } from '../../../core/patterns/index.ts'
import { notchesOf } from '../../../core/patterns/notches.ts'
import { gridSquare, PiecesDrawing } from '../../drawing/pieces-drawing.tsx'
import { cutSize, drawable, figuresOfShape, standIn } from '../../state/piece-shapes.ts'
import { settings } from '../../state/settings-state.ts'
import { writeWithUnit } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import './patterns.css'

/** The piece as it is typed, to scale, in view while one types. A broken outline stands in until the figures are there. */
export function PieceStage({ shape, name }: { shape: PieceShape; name: string }) {
  const outline = drawable(shape)
  const units = settings.value
  const figures = figuresOfShape(shape)
    .map(({ id, value }) => `${words.patterns.figures[id]} ${writeWithUnit(value, units)}`)
    .join(', ')
  const cut = cutSize(shape)
  return (
    <div class={outline ? 'piece-stage' : 'piece-stage piece-stand-in'}>
      <PiecesDrawing
        pieces={[
          {
            id: 'piece',
            outline: outline ?? seamLine(standIn(shape)),
            names: [name],
            notches: outline ? notchesOf(shape) : [],
          },
        ]}
        units={units}
        width={320}
        height={150}
        squared={outline !== null}
        label={outline ? words.patterns.drawing(name, figures) : words.patterns.drawingNone}
      />
      <p class="soft">
        {outline === null
          ? words.patterns.drawingNone
          : cut === null
            ? words.patterns.square(writeWithUnit(gridSquare(units), units))
            : words.patterns.cutSize(writeWithUnit(cut.width, units), writeWithUnit(cut.height, units))}
      </p>
    </div>
  )
}
