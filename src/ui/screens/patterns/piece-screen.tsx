import { useSignal } from '@preact/signals'
import { useLocation, useParams } from 'wouter-preact'
import type { Pattern, PatternPiece, PieceShape } from '../../../core/patterns/index.ts'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { FieldsOf } from '../../parts/use-typed.ts'
import {
  changePiece,
  dropPiece,
  isSameInEverySize,
  reshapePiece,
  shapePiece,
} from '../../state/edit-pattern.ts'
import { anyPatternById } from '../../state/patterns-state.ts'
import { blankShape, reshaped, type TypedForm } from '../../state/piece-shapes.ts'
import { pieceName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'
import { AllowancePicker } from './allowance-picker.tsx'
import { FormPictures } from './form-pictures.tsx'
import { PatternGone } from './gone.tsx'
import './patterns.css'
import { PieceCloth } from './piece-cloth.tsx'
import { PieceStage } from './piece-stage.tsx'
import { ShapeFields } from './shape-fields.tsx'

/** One piece to type in: its shape and figures in each size, how many, and how it lies on the cloth. */
export function PieceScreen() {
  const { id = '', piece: pieceId = '' } = useParams()
  const pattern = anyPatternById(id)
  const piece = pattern?.pieces.find((each) => each.id === pieceId)
  return pattern && piece ? (
    <Editing key={pieceId} pattern={pattern} piece={piece} />
  ) : (
    <PatternGone id={id} />
  )
}

interface PieceProps {
  readonly pattern: Pattern
  readonly piece: PatternPiece
}

function Editing({ pattern, piece }: PieceProps) {
  const [, go] = useLocation()
  const up = `/patterns/${pattern.id}/edit`
  const same = useSignal(isSameInEverySize(piece))
  const chosen = useSignal(pattern.sizes[0] ?? '')
  const size = pattern.sizes.includes(chosen.value) ? chosen.value : (pattern.sizes[0] ?? '')
  const shape = piece.shapes[size] ?? blankShape('box')
  const set = (to: PieceShape) => shapePiece(pattern.id, piece.id, same.value ? null : size, to)
  return (
    <Screen
      title={pieceName(pattern, piece)}
      back={up}
      foot={
        <div class="foot-row">
          <ButtonLink look="main" wide to={up}>
            {words.parts.done}
          </ButtonLink>
        </div>
      }
    >
      <PieceStage shape={shape} name={pieceName(pattern, piece)} />
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault()
        }}
      >
        <TextField
          id="piece-name"
          label={words.patterns.name}
          hint={words.patterns.pieceHint}
          leads
          value={piece.name}
          onValue={(name) => changePiece(pattern.id, piece.id, { name })}
        />
        {pattern.sizes.length > 1 && (
          <SizeChoice
            sizes={pattern.sizes}
            size={size}
            same={same.value}
            onSize={(name) => (chosen.value = name)}
            onSame={(checked) => {
              same.value = checked
              if (checked) shapePiece(pattern.id, piece.id, null, shape)
            }}
          />
        )}
        <FieldsOf.Provider value={`${pattern.id}/${piece.id}/${size} ${shape.form}`}>
          <ShapeFields key={`${size} ${shape.form}`} shape={shape} onShape={set} />
          <AllowancePicker shape={shape} onShape={(to) => reshapePiece(pattern.id, piece.id, to)} />
        </FieldsOf.Provider>
      </form>
      <FieldsOf.Provider value={`${pattern.id}/${piece.id}`}>
        <PieceCloth pattern={pattern} piece={piece} />
      </FieldsOf.Provider>
      <FormChange
        shape={shape}
        onForm={(form) => reshapePiece(pattern.id, piece.id, (now) => reshaped(now, form))}
      />
      <Button
        look="danger"
        icon="remove"
        onPress={() => {
          dropPiece(pattern, piece, words.patterns.pieceRemoved(pieceName(pattern, piece)))
          go(up)
        }}
      >
        {words.patterns.removePiece}
      </Button>
    </Screen>
  )
}

interface SizeChoiceProps {
  readonly sizes: readonly string[]
  readonly size: string
  readonly same: boolean
  readonly onSize: (size: string) => void
  readonly onSame: (same: boolean) => void
}

function SizeChoice({ sizes, size, same, onSize, onSame }: SizeChoiceProps) {
  return (
    <div class="stack">
      <Tick label={words.patterns.sameSizes} checked={same} onChange={onSame} />
      {!same && (
        <Choice
          name="piece-size"
          label={words.patterns.size}
          options={sizes.map((name) => ({ value: name, label: name }))}
          value={size}
          onChoose={onSize}
        />
      )}
    </div>
  )
}

/** Another shape for this piece; a drawn outline keeps its own. */
function FormChange({ shape, onForm }: { shape: PieceShape; onForm: (form: TypedForm) => void }) {
  if (shape.form === 'outline') return null
  return (
    <section class="stack" aria-labelledby="piece-form">
      <h2 id="piece-form">{words.patterns.form}</h2>
      <FormPictures chosen={shape.form} onPick={onForm} />
    </section>
  )
}
