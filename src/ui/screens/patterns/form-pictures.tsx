import { seamLine } from '../../../core/patterns/index.ts'
import { boxGrown, boxOf, closedPath, viewBox } from '../../drawing/paths.ts'
import { blankShape, standIn, TYPED_FORMS, type TypedForm } from '../../state/piece-shapes.ts'
import { words } from '../../words/words.ts'
import './patterns.css'

interface FormPicturesProps {
  readonly chosen?: string
  readonly onPick: (form: TypedForm) => void
}

/** The shapes that a piece can have, as pictures to tap. */
export function FormPictures({ chosen, onPick }: FormPicturesProps) {
  return (
    <ul class="form-pictures">
      {TYPED_FORMS.map((form) => (
        <li key={form}>
          <button
            type="button"
            class="form-picture"
            aria-pressed={chosen === undefined ? undefined : form === chosen}
            onClick={() => onPick(form)}
          >
            <FormPicture form={form} />
            {words.patterns.forms[form]}
          </button>
        </li>
      ))}
    </ul>
  )
}

function FormPicture({ form }: { form: TypedForm }) {
  const outline = seamLine(standIn(blankShape(form)))
  return (
    <svg class="drawing" viewBox={viewBox(boxGrown(boxOf([outline]), 8))} aria-hidden="true">
      <path class="piece" d={closedPath(outline)} />
    </svg>
  )
}
