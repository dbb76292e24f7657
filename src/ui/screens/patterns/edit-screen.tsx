import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { useLocation, useParams } from 'wouter-preact'
import type { Pattern, PatternPiece } from '../../../core/patterns/index.ts'
import { PiecesSmall } from '../../drawing/pieces-drawing.tsx'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { CardLink } from '../../parts/card.tsx'
import { Screen } from '../../parts/screen.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { chooseMake } from '../../state/choose-make.ts'
import { beginPiece, change, dropIfEmpty, removeOwn } from '../../state/edit-pattern.ts'
import { anyPatternById, faultsOf } from '../../state/patterns-state.ts'
import type { TypedForm } from '../../state/piece-shapes.ts'
import { cutWords, patternName, pieceName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'
import { FormPictures } from './form-pictures.tsx'
import { PatternGone } from './gone.tsx'
import { Hints } from './hints.tsx'
import { MakersRules } from './makers-rules.tsx'
import { NotionNeeds } from './notion-needs.tsx'
import './patterns.css'
import { Sizes } from './sizes.tsx'
import { Versions } from './versions.tsx'

/** Her own pattern to type in: name, pieces, sizes, versions. Stored at every change. */
export function EditScreen() {
  const { id = '' } = useParams()
  useEffect(() => () => dropIfEmpty(id), [id])
  const pattern = anyPatternById(id)
  return pattern ? <Editing key={id} pattern={pattern} /> : <PatternGone id={id} />
}

function Editing({ pattern }: { pattern: Pattern }) {
  const [, go] = useLocation()
  const ready = faultsOf(pattern).length === 0
  return (
    <Screen
      title={words.patterns.editTitle}
      back={ready ? `/patterns/${pattern.id}` : '/patterns'}
      foot={
        <div class="foot-row">
          <ButtonLink to={ready ? `/patterns/${pattern.id}` : '/patterns'}>{words.parts.done}</ButtonLink>
          <Button
            look="main"
            wide
            disabled={!ready}
            onPress={() => {
              chooseMake(pattern)
              go('/')
            }}
          >
            {words.patterns.checkShort}
          </Button>
        </div>
      }
    >
      <TextField
        id="pattern-name"
        label={words.patterns.name}
        value={pattern.name}
        onValue={(name) => change(pattern.id, (now) => ({ ...now, name }))}
      />
      <Pieces pattern={pattern} />
      <Sizes pattern={pattern} />
      <Hints pattern={pattern} />
      <Versions pattern={pattern} />
      <NotionNeeds pattern={pattern} />
      <MakersRules pattern={pattern} />
      <Button
        look="danger"
        icon="remove"
        onPress={() => {
          removeOwn(pattern, words.patterns.patternRemoved(patternName(pattern)))
          go('/patterns')
        }}
      >
        {words.patterns.removePattern}
      </Button>
    </Screen>
  )
}

function Pieces({ pattern }: { pattern: Pattern }) {
  const [, go] = useLocation()
  const choosing = useSignal(false)
  const begin = (form: TypedForm) => go(`/patterns/${pattern.id}/piece/${beginPiece(pattern, form)}`)
  if (pattern.pieces.length === 0) {
    return (
      <section class="stack" aria-labelledby="piece-list">
        <h2 id="piece-list">{words.patterns.firstPiece}</h2>
        <FormPictures onPick={begin} />
      </section>
    )
  }
  return (
    <section class="stack" aria-labelledby="piece-list">
      <h2 id="piece-list">{words.patterns.pieceList}</h2>
      <ul class="stack">
        {pattern.pieces.map((piece) => (
          <li key={piece.id}>
            <PieceCard pattern={pattern} piece={piece} />
          </li>
        ))}
      </ul>
      <Button icon="plus" onPress={() => (choosing.value = true)}>
        {words.patterns.addPiece}
      </Button>
      {choosing.value && (
        <Sheet title={words.patterns.whichShape} onClose={() => (choosing.value = false)}>
          <FormPictures onPick={begin} />
        </Sheet>
      )}
    </section>
  )
}

function PieceCard({ pattern, piece }: { pattern: Pattern; piece: PatternPiece }) {
  const alone: Pattern = { ...pattern, pieces: [piece], versions: [{ id: '', name: '', pieces: [piece.id] }] }
  return (
    <CardLink
      to={`/patterns/${pattern.id}/piece/${piece.id}`}
      picture={<PiecesSmall pattern={alone} />}
      title={pieceName(pattern, piece)}
    >
      <span class="card-text">{cutWords(piece)}</span>
    </CardLink>
  )
}
