import { useSignal } from '@preact/signals'
import type { Mm } from '../../../core/base/units.ts'
import {
  isByLength,
  type NeedAmount,
  NOTION_KINDS,
  type NotionKind,
  type NotionNeed,
} from '../../../core/notions/index.ts'
import type { Pattern } from '../../../core/patterns/index.ts'
import { Button } from '../../parts/button.tsx'
import { CardButton } from '../../parts/card.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { Picker } from '../../parts/picker.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { FieldsOf } from '../../parts/use-typed.ts'
import { addNeed, changeNeed, dropNeed, type NeedChange } from '../../state/edit-needs.ts'
import { settings } from '../../state/settings-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { kindWords, widthName } from '../../words/notion-words.ts'
import { words } from '../../words/words.ts'
import { NeedAmountFields } from './need-amount.tsx'

const texts = notionWords

/** What her pattern takes besides cloth. */
export function NotionNeeds({ pattern }: { pattern: Pattern }) {
  const open = useSignal<string | null>(null)
  if (pattern.pieces.length === 0) return null
  const needs = pattern.notions ?? []
  const shown = needs.find(({ id }) => id === open.value)
  return (
    <section class="stack" aria-labelledby="need-list">
      <h2 id="need-list">{texts.needList}</h2>
      <p class="field-hint">{texts.needHint}</p>
      {needs.length > 0 && (
        <ul class="stack">
          {needs.map((need) => (
            <li key={need.id}>
              <CardButton
                title={need.name.trim() || texts.kinds[need.kind]}
                onPress={() => (open.value = need.id)}
              >
                <span class="card-text">{kindWords(need.kind, need.width, settings.value)}</span>
              </CardButton>
            </li>
          ))}
        </ul>
      )}
      <Button icon="plus" onPress={() => (open.value = addNeed(pattern))}>
        {texts.addNeed}
      </Button>
      {shown && <OneNeed pattern={pattern} need={shown} onClose={() => (open.value = null)} />}
    </section>
  )
}

interface OneNeedProps {
  readonly pattern: Pattern
  readonly need: NotionNeed
  readonly onClose: () => void
}

function OneNeed({ pattern, need, onClose }: OneNeedProps) {
  const set = (part: NeedChange) => changeNeed(pattern.id, need.id, part)
  return (
    <Sheet title={texts.need} onClose={onClose}>
      <Picker
        id="need-kind"
        label={texts.kind}
        options={NOTION_KINDS.map((kind) => ({ value: kind, label: texts.kinds[kind] }))}
        value={need.kind}
        onPick={(kind) => set({ kind, amount: amountFor(kind, need.amount) })}
      />
      <TextField id="need-name" label={texts.name} value={need.name} onValue={(name) => set({ name })} />
      <FieldsOf.Provider value={`${pattern.id}/${need.id}`}>
        <LengthField
          id="need-width"
          label={widthName(need.kind)}
          hint={texts.anyWidth}
          value={need.width}
          units={settings.value}
          onValue={(width: Mm | null, unread) => {
            if (width !== null || unread === '') set({ width })
          }}
        />
        <NeedAmountFields pattern={pattern} need={need} onNeed={set} />
      </FieldsOf.Provider>
      {pattern.versions.length > 1 && <InVersions pattern={pattern} need={need} />}
      <Button look="main" wide onPress={onClose}>
        {words.parts.done}
      </Button>
      <Button
        look="danger"
        icon="remove"
        onPress={() => {
          dropNeed(pattern, need, texts.needRemoved)
          onClose()
        }}
      >
        {texts.removeNeed}
      </Button>
    </Sheet>
  )
}

function InVersions({ pattern, need }: Omit<OneNeedProps, 'onClose'>) {
  const all = pattern.versions.map(({ id }) => id)
  const chosen = need.versions ?? all
  return (
    <fieldset class="choice">
      <legend class="field-label">{texts.inVersion}</legend>
      {pattern.versions.map(({ id, name }) => (
        <Tick
          key={id}
          label={name.trim() || words.patterns.unnamed}
          checked={chosen.includes(id)}
          onChange={(takes) =>
            changeNeed(pattern.id, need.id, {
              versions: all.filter((each) => (each === id ? takes : chosen.includes(each))),
            })
          }
        />
      ))}
    </fieldset>
  )
}

/** A kind by count is counted, one by length is measured; what was typed stays where it can. */
function amountFor(kind: NotionKind, amount: NeedAmount): NeedAmount {
  if (!isByLength(kind)) return amount.form === 'count' ? amount : { form: 'count', count: {} }
  return amount.form === 'count' ? { form: 'table', each: 1, length: {} } : amount
}
