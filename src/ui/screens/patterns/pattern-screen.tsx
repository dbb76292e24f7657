import { useSignal } from '@preact/signals'
import type { ComponentChildren } from 'preact'
import { useLocation, useParams } from 'wouter-preact'
import type { Pattern } from '../../../core/patterns/index.ts'
import { notchesOf } from '../../../core/patterns/notches.ts'
import { gridSquare, PiecesDrawing } from '../../drawing/pieces-drawing.tsx'
import { Button, ButtonLink } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { draft, tell } from '../../state/check-state.ts'
import { chooseMake } from '../../state/choose-make.ts'
import { copyPattern } from '../../state/edit-pattern.ts'
import { addThing } from '../../state/look-for.ts'
import { anyPatternById, faultsOf, isOwn } from '../../state/patterns-state.ts'
import { drawable } from '../../state/piece-shapes.ts'
import { settings } from '../../state/settings-state.ts'
import { lookForWords } from '../../words/en/look-for.ts'
import { projectWords } from '../../words/en/projects.ts'
import { writeNumber, writeWithUnit } from '../../words/format.ts'
import { thingDetail } from '../../words/look-for-words.ts'
import { cutWords, needsWords, patternName, pieceName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'
import { PatternNotions } from '../notions/pattern-notions.tsx'
import { PatternGone } from './gone.tsx'
import { Hints } from './hints.tsx'
import './patterns.css'

/** A pattern to look at: its pieces in a size and version, what it needs, and the way to check a garment for it. */
export function PatternScreen() {
  const { id = '' } = useParams()
  const pattern = anyPatternById(id)
  return pattern ? <Shown key={id} pattern={pattern} /> : <PatternGone id={id} />
}

function Shown({ pattern }: { pattern: Pattern }) {
  const [, go] = useLocation()
  const usual = pattern.id === draft.peek().pattern ? draft.peek() : null
  const size = useSignal(usual?.size ?? middle(pattern.sizes))
  const version = useSignal(usual?.version ?? pattern.versions[0]?.id ?? '')
  const ready = faultsOf(pattern).length === 0
  const check = () => {
    chooseMake(pattern)
    tell({ size: size.value, version: version.value })
    go('/')
  }
  return (
    <Screen
      title={patternName(pattern)}
      back="/patterns"
      foot={
        <div class="foot-row">
          <Button look="main" icon="check" wide disabled={!ready} onPress={check}>
            {words.patterns.check}
          </Button>
        </div>
      }
    >
      {pattern.about && <p>{pattern.about}</p>}
      <Hints pattern={pattern} />
      <Choosing pattern={pattern} size={size.value} onSize={(name) => (size.value = name)}>
        {pattern.versions.length > 1 && (
          <Choice
            name="version"
            label={words.patterns.version}
            options={pattern.versions.map(({ id, name }) => ({ value: id, label: name }))}
            value={version.value}
            onChoose={(chosen) => (version.value = chosen)}
          />
        )}
      </Choosing>
      <Pieces pattern={pattern} size={size.value} version={version.value} />
      <section class="stack" aria-labelledby="needs">
        <h2 id="needs">{words.patterns.needs}</h2>
        <ul>
          {needsWords(pattern, version.value, settings.value).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </section>
      <PatternNotions pattern={pattern} version={version.value} size={size.value} />
      {ready && <Onward pattern={pattern} choice={{ size: size.value, version: version.value }} />}
      <Cautions ids={pattern.cautions} />
      <Changing pattern={pattern} />
    </Screen>
  )
}

interface ChoosingProps {
  readonly pattern: Pattern
  readonly size: string
  readonly onSize: (size: string) => void
  readonly children: ComponentChildren
}

function Choosing({ pattern, size, onSize, children }: ChoosingProps) {
  return (
    <section class="stack">
      {pattern.sizes.length > 1 && (
        <Choice
          name="size"
          label={words.patterns.size}
          options={pattern.sizes.map((name) => ({ value: name, label: name }))}
          value={size}
          onChoose={onSize}
        />
      )}
      {children}
    </section>
  )
}

function Pieces({ pattern, size, version }: { pattern: Pattern; size: string; version: string }) {
  const wanted = pattern.versions.find(({ id }) => id === version)?.pieces ?? []
  const pieces = pattern.pieces
    .filter(({ id }) => wanted.includes(id))
    .map((piece, k) => ({ piece, number: writeNumber(k + 1), outline: drawable(piece.shapes[size]) }))
  const drawn = pieces.flatMap(({ piece, number, outline }) => {
    const shape = piece.shapes[size]
    if (!outline || !shape) return []
    return [{ id: piece.id, outline, names: [number, pieceName(pattern, piece)], notches: notchesOf(shape) }]
  })
  return (
    <section class="stack" aria-labelledby="pieces">
      <h2 id="pieces">{words.patterns.pieceList}</h2>
      {drawn.length > 0 && (
        <>
          <PiecesDrawing pieces={drawn} units={settings.value} label={words.patterns.drawn} />
          <p class="field-hint">
            {words.patterns.grid(writeWithUnit(gridSquare(settings.value), settings.value))}
          </p>
        </>
      )}
      <ol class="piece-key">
        {pieces.map(({ piece, number, outline }) => (
          <li key={piece.id}>
            <b>{number}</b>
            <span>
              {pieceName(pattern, piece)}
              <span class="piece-cut">{outline ? cutWords(piece) : words.patterns.noSize}</span>
            </span>
          </li>
        ))}
      </ol>
    </section>
  )
}

/** What else to do with it in this size and version: begin a project, or put it on the list of what to look for. */
function Onward({ pattern, choice }: { pattern: Pattern; choice: { size: string; version: string } }) {
  const [, go] = useLocation()
  const look = () => {
    const thing = { ...choice, pattern: pattern.id, role: null }
    void addThing(thing, patternName(pattern), thingDetail(pattern, thing))
    go('/look-for')
  }
  const chosen = [pattern.id, choice.size, choice.version].map(encodeURIComponent).join('/')
  return (
    <div class="stack">
      <ButtonLink icon="projects" to={`/projects/new/${chosen}`}>
        {projectWords.begin}
      </ButtonLink>
      <Button icon="list" onPress={look}>
        {lookForWords.fromPattern}
      </Button>
    </div>
  )
}

/** Her own is changed; one that came with the app is copied first. */
function Changing({ pattern }: { pattern: Pattern }) {
  const [, go] = useLocation()
  return (
    <div class="stack">
      {isOwn(pattern) && <ButtonLink to={`/patterns/${pattern.id}/edit`}>{words.patterns.edit}</ButtonLink>}
      <Button
        onPress={() => {
          const copy = copyPattern(pattern, words.patterns.copyOf(pattern.name))
          go(`/patterns/${copy}/edit`)
        }}
      >
        {words.patterns.copy}
      </Button>
    </div>
  )
}

function middle(sizes: readonly string[]): string {
  return sizes[Math.floor(sizes.length / 2)] ?? ''
}
