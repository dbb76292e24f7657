import { useSignal } from '@preact/signals'
import type { Pattern, Version } from '../../../core/patterns/index.ts'
import { Button } from '../../parts/button.tsx'
import { CardButton } from '../../parts/card.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { addVersion, changeVersion, dropVersion } from '../../state/edit-pattern.ts'
import { writeList } from '../../words/format.ts'
import { pieceName } from '../../words/pattern-words.ts'
import { words } from '../../words/words.ts'

/** The versions of the pattern, once it has a piece; a single one is not shown. */
export function Versions({ pattern }: { pattern: Pattern }) {
  const open = useSignal<string | null>(null)
  if (pattern.pieces.length === 0) return null
  const shown = pattern.versions.find(({ id }) => id === open.value)
  return (
    <section class="stack" aria-labelledby="version-list">
      <h2 id="version-list">{words.patterns.versionList}</h2>
      <p class="field-hint">{words.patterns.versionHint}</p>
      {pattern.versions.length > 1 && (
        <ul class="stack">
          {pattern.versions.map((version) => (
            <li key={version.id}>
              <CardButton
                title={version.name.trim() || words.patterns.unnamed}
                onPress={() => (open.value = version.id)}
              >
                <span class="card-text">{piecesIn(pattern, version)}</span>
              </CardButton>
            </li>
          ))}
        </ul>
      )}
      <Button icon="plus" onPress={() => (open.value = addVersion(pattern))}>
        {words.patterns.addVersion}
      </Button>
      {shown && <OneVersion pattern={pattern} version={shown} onClose={() => (open.value = null)} />}
    </section>
  )
}

interface OneVersionProps {
  readonly pattern: Pattern
  readonly version: Version
  readonly onClose: () => void
}

function OneVersion({ pattern, version, onClose }: OneVersionProps) {
  const tick = (id: string, needed: boolean) => {
    // In the pattern's order, whatever the order of ticking.
    const wanted = (piece: string) => (piece === id ? needed : version.pieces.includes(piece))
    changeVersion(pattern.id, version.id, { pieces: pattern.pieces.map((each) => each.id).filter(wanted) })
  }
  return (
    <Sheet title={words.patterns.versionTitle} onClose={onClose}>
      <TextField
        id="version-name"
        label={words.patterns.name}
        value={version.name}
        onValue={(name) => changeVersion(pattern.id, version.id, { name })}
      />
      <fieldset class="choice">
        <legend class="field-label">{words.patterns.versionPieces}</legend>
        {pattern.pieces.map((piece) => (
          <Tick
            key={piece.id}
            label={pieceName(pattern, piece)}
            checked={version.pieces.includes(piece.id)}
            onChange={(needed) => tick(piece.id, needed)}
          />
        ))}
      </fieldset>
      <Button look="main" wide onPress={onClose}>
        {words.parts.done}
      </Button>
      {pattern.versions.length > 1 && (
        <Button
          look="danger"
          icon="remove"
          onPress={() => {
            dropVersion(pattern, version, words.patterns.versionRemoved)
            onClose()
          }}
        >
          {words.patterns.removeVersion}
        </Button>
      )}
    </Sheet>
  )
}

function piecesIn(pattern: Pattern, { pieces }: Version): string {
  return writeList(
    pattern.pieces.filter(({ id }) => pieces.includes(id)).map((piece) => pieceName(pattern, piece)),
  )
}
