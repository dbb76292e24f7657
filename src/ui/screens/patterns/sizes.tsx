import { useSignal } from '@preact/signals'
import type { Mm } from '../../../core/base/units.ts'
import { addSize, type Pattern, renameSize } from '../../../core/patterns/index.ts'
import { Button } from '../../parts/button.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { Picker } from '../../parts/picker.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { TextField } from '../../parts/text-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import { FieldsOf } from '../../parts/use-typed.ts'
import { change, dropSize } from '../../state/edit-pattern.ts'
import { settings } from '../../state/settings-state.ts'
import { forgetLeftIn } from '../../state/unfinished.ts'
import { words } from '../../words/words.ts'
import './patterns.css'

/** The size a pattern begins with until she names it. */
const FIRST = 'one size'

/** The sizes of the pattern; a new one is copied from another with a step. */
export function Sizes({ pattern }: { pattern: Pattern }) {
  const open = useSignal<string | null>(null)
  const adding = useSignal(false)
  return (
    <section class="stack" aria-labelledby="size-list">
      <h2 id="size-list">{words.patterns.sizeList}</h2>
      <div class="size-chips">
        {pattern.sizes.map((size) => (
          <Button key={size} onPress={() => (open.value = size)}>
            {size}
          </Button>
        ))}
        <Button look="quiet" icon="plus" onPress={() => (adding.value = true)}>
          {words.patterns.addSize}
        </Button>
      </div>
      {adding.value && (
        <FieldsOf.Provider value={newSizeOf(pattern)}>
          <AddSize pattern={pattern} onClose={() => (adding.value = false)} />
        </FieldsOf.Provider>
      )}
      {open.value !== null && pattern.sizes.includes(open.value) && (
        <OneSize pattern={pattern} size={open.value} onClose={() => (open.value = null)} />
      )}
    </section>
  )
}

/** Under what name the figures of a size that is not added yet are kept. */
const newSizeOf = ({ id }: Pattern): string => `${id}/new-size`

interface SheetProps {
  readonly pattern: Pattern
  readonly onClose: () => void
}

function AddSize({ pattern, onClose }: SheetProps) {
  const first = pattern.sizes.length === 1 && pattern.sizes[0] === FIRST
  const name = useSignal('')
  const firstName = useSignal('')
  const like = useSignal(pattern.sizes.at(-1) ?? '')
  const across = useSignal<Mm | null>(null)
  const along = useSignal<Mm | null>(null)
  const smaller = useSignal(false)
  const asked = useSignal(false)
  const fault = nameFault(name.value, first ? [firstName.value] : pattern.sizes)
  const firstFault = first && firstName.value.trim() === '' ? words.patterns.sizeNeedsName : null
  const add = () => {
    asked.value = true
    if (fault || firstFault) return
    const sign = smaller.value ? -1 : 1
    const step = { across: sign * (across.value ?? 0), along: sign * (along.value ?? 0) }
    change(pattern.id, (now) => {
      const named = first ? renameSize(now, FIRST, firstName.value.trim()) : now
      return addSize(named, name.value.trim(), first ? firstName.value.trim() : like.value, step)
    })
    forgetLeftIn(newSizeOf(pattern))
    onClose()
  }
  return (
    <Sheet title={words.patterns.addSize} onClose={onClose}>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault()
          add()
        }}
      >
        <TextField
          id="size-name"
          isPart={false}
          label={words.patterns.sizeName}
          value={name.value}
          error={asked.value ? fault : null}
          onValue={(typed) => (name.value = typed)}
        />
        {first ? (
          <TextField
            id="first-size"
            isPart={false}
            label={words.patterns.firstSizeName}
            value={firstName.value}
            error={asked.value ? firstFault : null}
            onValue={(typed) => (firstName.value = typed)}
          />
        ) : (
          <Picker
            id="size-like"
            label={words.patterns.sizeLike}
            options={pattern.sizes.map((size) => ({ value: size, label: size }))}
            value={like.value}
            onPick={(size) => (like.value = size)}
          />
        )}
        <LengthField
          id="step-across"
          isPart={false}
          label={words.patterns.stepAcross}
          value={across.value}
          units={settings.value}
          onValue={(typed) => (across.value = typed)}
        />
        <LengthField
          id="step-along"
          isPart={false}
          label={words.patterns.stepAlong}
          hint={words.patterns.stepHint}
          value={along.value}
          units={settings.value}
          onValue={(typed) => (along.value = typed)}
        />
        <Tick
          label={words.patterns.smaller}
          checked={smaller.value}
          onChange={(checked) => (smaller.value = checked)}
        />
        <Button look="main" type="submit" wide>
          {words.patterns.addSize}
        </Button>
      </form>
    </Sheet>
  )
}

function OneSize({ pattern, size, onClose }: SheetProps & { size: string }) {
  const name = useSignal(size)
  const fault = nameFault(
    name.value,
    pattern.sizes.filter((each) => each !== size),
  )
  const rename = () => {
    if (fault) return
    if (name.value.trim() !== size) change(pattern.id, (now) => renameSize(now, size, name.value.trim()))
    onClose()
  }
  return (
    <Sheet title={words.check.sizeIs(size)} onClose={onClose}>
      <form
        class="stack"
        onSubmit={(event) => {
          event.preventDefault()
          rename()
        }}
      >
        <TextField
          id="size-name"
          label={words.patterns.renameSize}
          value={name.value}
          error={fault}
          onValue={(typed) => (name.value = typed)}
        />
        <Button look="main" type="submit" wide>
          {words.patterns.rename}
        </Button>
        {pattern.sizes.length > 1 ? (
          <Button
            look="danger"
            icon="remove"
            onPress={() => {
              dropSize(pattern, size, words.patterns.sizeRemoved(size))
              onClose()
            }}
          >
            {words.patterns.removeSize(size)}
          </Button>
        ) : (
          <p class="field-hint">{words.patterns.lastSize}</p>
        )}
      </form>
    </Sheet>
  )
}

function nameFault(name: string, taken: readonly string[]): string | null {
  if (name.trim() === '') return words.patterns.sizeNeedsName
  return taken.some((each) => each.trim() === name.trim()) ? words.patterns.sizeTaken : null
}
