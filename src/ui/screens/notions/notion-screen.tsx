import { useSignal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { useLocation, useParams } from 'wouter-preact'
import type { Mm } from '../../../core/base/units.ts'
import { isByLength, NOTION_KINDS, type Notion } from '../../../core/notions/index.ts'
import { Button, ButtonLink, IconButton } from '../../parts/button.tsx'
import { GarmentNotes } from '../../parts/garment-notes.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Picker } from '../../parts/picker.tsx'
import { Screen } from '../../parts/screen.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { FieldsOf } from '../../parts/use-typed.ts'
import {
  changeNotion,
  dropIfBlank,
  dropLength,
  dropNotion,
  notionById,
  notionsOpen,
  openNotions,
} from '../../state/notions-state.ts'
import { settings } from '../../state/settings-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { writeNumber, writeWithUnit } from '../../words/format.ts'
import { notionName, widthName } from '../../words/notion-words.ts'
import { words } from '../../words/words.ts'
import './notions.css'

const texts = notionWords
const MOST_OWNED = 1000

/** One notion: what it is and how much of it there is. Stored at every change. */
export function NotionScreen() {
  const { id = '' } = useParams()
  useEffect(() => {
    void openNotions()
    return () => dropIfBlank(id)
  }, [id])
  const notion = notionById(id)
  if (notion)
    return (
      <FieldsOf.Provider value={id}>
        <Shown key={id} notion={notion} />
      </FieldsOf.Provider>
    )
  if (!notionsOpen.value) return <p class="loading soft">{words.shell.loading}</p>
  return (
    <Screen title={texts.gone} back="/notions">
      <ButtonLink look="main" to="/notions">
        {texts.toAll}
      </ButtonLink>
    </Screen>
  )
}

function Shown({ notion }: { notion: Notion }) {
  const [, go] = useLocation()
  const set = (part: Partial<Notion>) => changeNotion(notion.id, part)
  return (
    <Screen title={notionName(notion)} back="/notions">
      <Picker
        id="notion-kind"
        label={texts.kind}
        options={NOTION_KINDS.map((kind) => ({ value: kind, label: texts.kinds[kind] }))}
        value={notion.kind}
        onPick={(kind) => set({ kind })}
      />
      <TextField id="notion-name" label={texts.name} value={notion.name} onValue={(name) => set({ name })} />
      <LengthField
        id="notion-width"
        label={widthName(notion.kind)}
        hint={texts.widthHint}
        value={notion.width}
        units={settings.value}
        onValue={(width, unread) => {
          if (width !== null || unread === '') set({ width })
        }}
      />
      {isByLength(notion.kind) ? (
        <Lengths notion={notion} />
      ) : (
        <NumberField
          id="notion-count"
          label={texts.count}
          value={notion.count}
          unit=""
          least={0}
          most={MOST_OWNED}
          step={1}
          whole
          onValue={(count) => set({ count: count ?? 0 })}
        />
      )}
      <TextField
        id="notion-colour"
        label={texts.colour}
        value={notion.colour}
        onValue={(colour) => set({ colour })}
      />
      <TextField
        id="notion-place"
        label={texts.place}
        value={notion.place}
        onValue={(place) => set({ place })}
      />
      <GarmentNotes
        id="notion"
        price={notion.price}
        note={notion.note}
        onPrice={(price) => set({ price })}
        onNote={(note) => set({ note })}
      />
      <Button
        look="danger"
        icon="remove"
        onPress={() => {
          dropNotion(notion, texts.removed(notionName(notion)))
          go('/notions')
        }}
      >
        {texts.remove}
      </Button>
    </Screen>
  )
}

/** Every length by itself: they are cut one by one. */
function Lengths({ notion }: { notion: Notion }) {
  const { id, lengths } = notion
  const change = (at: number, value: Mm | null) => {
    if (value !== null) changeNotion(id, { lengths: lengths.with(at, value) })
  }
  return (
    <section class="stack" aria-labelledby="lengths">
      <h2 id="lengths">{texts.lengths}</h2>
      {lengths.map((length, at) => (
        <div key={at} class="length-row">
          <div class="grow">
            <LengthField
              id={`length-${at}`}
              label={texts.lengthNumber(writeNumber(at + 1))}
              value={length}
              units={settings.value}
              onValue={(value) => change(at, value)}
            />
          </div>
          <IconButton
            icon="remove"
            label={texts.removeLength(writeWithUnit(length, settings.value))}
            onPress={() => dropLength(notion, at, texts.lengthRemoved(writeWithUnit(length, settings.value)))}
          />
        </div>
      ))}
      <AddLength onAdd={(length) => changeNotion(id, { lengths: [...lengths, length] })} />
    </section>
  )
}

function AddLength({ onAdd }: { onAdd: (length: Mm) => void }) {
  const typed = useSignal<Mm | null>(null)
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault()
        if (typed.value === null) return
        onAdd(typed.value)
        typed.value = null
      }}
    >
      <LengthField
        id="new-length"
        label={texts.nextLength}
        value={typed.value}
        units={settings.value}
        isPart={false}
        onValue={(value) => (typed.value = value)}
      />
      <Button type="submit" icon="plus" disabled={typed.value === null}>
        {texts.addLength}
      </Button>
    </form>
  )
}
