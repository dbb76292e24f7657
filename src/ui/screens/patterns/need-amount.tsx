import type { NeedAmount, NotionNeed } from '../../../core/notions/index.ts'
import type { Pattern } from '../../../core/patterns/index.ts'
import { Choice } from '../../parts/choice.tsx'
import { LengthField } from '../../parts/length-field.tsx'
import { NumberField } from '../../parts/number-field.tsx'
import { Tick } from '../../parts/tick.tsx'
import type { NeedChange } from '../../state/edit-needs.ts'
import { settings } from '../../state/settings-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { words } from '../../words/words.ts'

const texts = notionWords
const MOST = 1000

interface NeedAmountProps {
  readonly pattern: Pattern
  readonly need: NotionNeed
  readonly onNeed: (part: NeedChange) => void
}

/** How much of it each size takes: a number, a length from a table, or the body or edge by a formula. */
export function NeedAmountFields({ pattern, need, onNeed }: NeedAmountProps) {
  const { amount } = need
  const { sizes } = pattern
  const set = (to: NeedAmount) => onNeed({ amount: to })
  if (amount.form === 'count') {
    return sizes.map((size) => (
      <Whole
        key={size}
        id={`need-count-${size}`}
        label={texts.countIn(size)}
        value={amount.count[size] ?? null}
        onValue={(count) => set({ ...amount, count: withFigure(amount.count, size, count) })}
      />
    ))
  }
  return (
    <>
      <Choice
        name="need-form"
        label={texts.form}
        options={[
          { value: 'formula', label: texts.forms.formula },
          { value: 'table', label: texts.forms.table },
        ]}
        value={amount.form}
        onChoose={(form) => set(inForm(amount, form))}
      />
      <Whole
        id="need-each"
        label={texts.pieceCount}
        value={amount.each}
        onValue={(each) => set({ ...amount, each: each ?? 1 })}
      />
      {amount.form === 'formula' && <Formula amount={amount} onAmount={set} />}
      {sizes.map((size) => (
        <BySize key={size} size={size} amount={amount} onAmount={set} />
      ))}
      {need.kind === 'elastic' && <Passes pattern={pattern} need={need} onNeed={onNeed} />}
    </>
  )
}

type ByLength = Exclude<NeedAmount, { form: 'count' }>
type ByFormula = Extract<NeedAmount, { form: 'formula' }>

function Formula({ amount, onAmount }: { amount: ByFormula; onAmount: (to: NeedAmount) => void }) {
  return (
    <>
      <NumberField
        id="need-ratio"
        label={texts.ratio}
        hint={texts.ratioHint}
        value={Math.round(amount.ratio * 1000) / 10}
        unit={words.parts.percent}
        least={10}
        most={500}
        step={1}
        onValue={(percent) => {
          if (percent !== null) onAmount({ ...amount, ratio: percent / 100 })
        }}
      />
      <LengthField
        id="need-extra"
        label={texts.extra}
        value={amount.extra > 0 ? amount.extra : null}
        units={settings.value}
        onValue={(extra) => onAmount({ ...amount, extra: extra ?? 0 })}
      />
    </>
  )
}

interface BySizeProps {
  readonly size: string
  readonly amount: ByLength
  readonly onAmount: (to: NeedAmount) => void
}

function BySize({ size, amount, onAmount }: BySizeProps) {
  const figures = amount.form === 'table' ? amount.length : amount.edge
  return (
    <LengthField
      id={`need-length-${size}`}
      label={amount.form === 'table' ? texts.length(size) : texts.edge(size)}
      value={figures[size] ?? null}
      units={settings.value}
      onValue={(value) => {
        const to = withFigure(figures, size, value)
        onAmount(amount.form === 'table' ? { ...amount, length: to } : { ...amount, edge: to })
      }}
    />
  )
}

/** What a ring of elastic must be pulled over. */
function Passes({ pattern, need, onNeed }: NeedAmountProps) {
  const { passes } = need
  const tick = (ring: boolean) => onNeed({ passes: ring ? {} : undefined })
  return (
    <>
      <Tick label={texts.passesTick} hint={texts.passesHint} checked={passes !== undefined} onChange={tick} />
      {passes !== undefined &&
        pattern.sizes.map((size) => (
          <LengthField
            key={size}
            id={`need-passes-${size}`}
            label={texts.passes(size)}
            value={passes[size] ?? null}
            units={settings.value}
            onValue={(value) => onNeed({ passes: withFigure(passes, size, value) })}
          />
        ))}
    </>
  )
}

interface WholeProps {
  readonly id: string
  readonly label: string
  readonly value: number | null
  readonly onValue: (value: number | null) => void
}

function Whole({ id, label, value, onValue }: WholeProps) {
  return (
    <NumberField
      id={id}
      label={label}
      value={value}
      unit=""
      least={0}
      most={MOST}
      step={1}
      whole
      onValue={onValue}
    />
  )
}

type Figures = Readonly<Record<string, number>>

/** null: the size has no figure. */
function withFigure(figures: Figures, size: string, figure: number | null): Figures {
  const others = Object.fromEntries(Object.entries(figures).filter(([name]) => name !== size))
  return figure === null ? others : { ...others, [size]: figure }
}

/** The figures typed for one form are the start of the other. */
function inForm(amount: ByLength, form: ByLength['form']): NeedAmount {
  if (amount.form === form) return amount
  const { each } = amount
  return amount.form === 'table'
    ? { form: 'formula', each, edge: amount.length, ratio: 1, extra: 0 }
    : { form: 'table', each, length: amount.edge }
}
