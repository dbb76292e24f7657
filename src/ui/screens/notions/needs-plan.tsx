import { type Signal, useSignal } from '@preact/signals'
import { useEffect, useMemo } from 'preact/hooks'
import {
  isByLength,
  type Needed,
  type NotionCut,
  type NotionPlan,
  planNotions,
  ringStretch,
  SHORTEST_END,
  serves,
  type WantedColours,
} from '../../../core/notions/index.ts'
import { Icon } from '../../parts/icon.tsx'
import { Picker } from '../../parts/picker.tsx'
import { notions, openNotions } from '../../state/notions-state.ts'
import { settings } from '../../state/settings-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { writeNumber, writePercent, writeWithUnit } from '../../words/format.ts'
import { buyWords, kindWords, notionName, piecesWords } from '../../words/notion-words.ts'
import './notions.css'

const texts = notionWords

/** A plan for the needs from the notions owned, worked out anew whenever one of them changes. */
export function useNotionPlan(needed: readonly Needed[]): {
  readonly plan: NotionPlan
  readonly colours: Signal<WantedColours>
} {
  useEffect(() => void openNotions(), [])
  const colours = useSignal<WantedColours>({})
  const owned = notions.value
  const wanted = colours.value
  const plan = useMemo(
    () => planNotions(needed, owned, wanted),
    [JSON.stringify(needed.map(({ need, lengths, count }) => [need.id, lengths, count])), owned, wanted],
  )
  return { plan, colours }
}

interface NeedLineProps {
  readonly needed: Needed
  readonly size: string
  readonly colours: Signal<WantedColours>
  /** Cut or taken already, in words; empty: nothing. */
  readonly already?: string
}

/** One need: how much, what an elastic must do, and in which colour. */
export function NeedLine({ needed, size, colours, already = '' }: NeedLineProps) {
  const { need, unknown } = needed
  return (
    <li class="need-line">
      <h3>{need.name.trim() || texts.kinds[need.kind]}</h3>
      <p>
        {kindWords(need.kind, need.width, settings.value)}
        {unknown ? '' : `: ${amountWords(needed)}`}
      </p>
      {unknown && <p class="soft">{texts.unknown(size)}</p>}
      {already !== '' && <p class="soft">{texts.already(already)}</p>}
      <Ring needed={needed} size={size} />
      <Colour needed={needed} colours={colours} />
    </li>
  )
}

export function amountWords({ need, lengths, count }: Needed): string {
  if (!isByLength(need.kind)) return writeNumber(count)
  return lengths.length === 0 ? writeNumber(0) : piecesWords(lengths, settings.value)
}

function Ring({ needed, size }: { needed: Needed; size: string }) {
  const ring = ringStretch(needed.need, size)
  if (!ring || ring.stretch === 0) return null
  const said = [writePercent(Math.ceil(ring.stretch)), writeWithUnit(ring.passes, settings.value)] as const
  if (!ring.doubtful) return <p class="field-hint">{texts.stretch(...said)}</p>
  return (
    <p class="field-query">
      <Icon name="doubt" size={18} />
      <span>{texts.doubtful(...said)}</span>
    </p>
  )
}

/** Offered once there is a choice. */
function Colour({ needed: { need }, colours }: Pick<NeedLineProps, 'needed' | 'colours'>) {
  const fitting = notions.value.filter((notion) => serves(notion, need))
  const offered = [...new Set(fitting.map(({ colour }) => colour.trim()).filter((colour) => colour !== ''))]
  if (offered.length < 2) return null
  return (
    <Picker
      id={`colour-${need.id}`}
      label={texts.colourOf(need.name.trim() || texts.kinds[need.kind])}
      options={[{ value: '', label: texts.anyColour }, ...offered.map((value) => ({ value, label: value }))]}
      value={colours.value[need.id] ?? ''}
      onPick={(colour) => {
        colours.value = { ...colours.value, [need.id]: colour }
      }}
    />
  )
}

/** Which length each piece is cut from, and what is to be bought. */
export function PlanLists({ plan }: { plan: NotionPlan }) {
  return (
    <>
      {plan.cuts.length > 0 && (
        <section class="stack" aria-labelledby="notion-cuts">
          <h3 id="notion-cuts">{texts.owned}</h3>
          <ul>
            {plan.cuts.map((cut, k) => (
              <CutLine key={k} cut={cut} />
            ))}
          </ul>
          {!plan.proved && <p class="field-hint">{texts.notProved}</p>}
        </section>
      )}
      {plan.toBuy.length > 0 && (
        <section class="stack" aria-labelledby="notions-to-buy">
          <h3 id="notions-to-buy">{texts.toBuy}</h3>
          <ul class="stack">
            {plan.toBuy.map((line) => {
              const said = buyWords(line, settings.value)
              return <li key={said}>{said}</li>
            })}
          </ul>
        </section>
      )}
    </>
  )
}

function CutLine({ cut }: { cut: NotionCut }) {
  const notion = notions.value.find(({ id }) => id === cut.notion)
  if (!notion) return null
  const name = [notionName(notion), notion.colour, notion.place]
    .filter((part) => part.trim() !== '')
    .join(', ')
  return (
    <li class="notion-cut">
      <strong>{name}</strong>
      {isByLength(notion.kind) ? <LengthCut cut={cut} /> : <span>{countCut(cut)}</span>}
    </li>
  )
}

function LengthCut({ cut }: { cut: NotionCut }) {
  const pieces = piecesWords(
    cut.takes.map(({ amount }) => amount),
    settings.value,
  )
  const from = writeWithUnit(cut.from, settings.value)
  return (
    <>
      <span>
        {cut.left >= SHORTEST_END
          ? texts.cutOff(from, pieces, writeWithUnit(cut.left, settings.value, 'down'))
          : texts.usedUp(from, pieces)}
      </span>
      <span class="length-bar" aria-hidden="true">
        {cut.takes.map(({ amount }, k) => (
          <span key={k} style={{ width: `${(100 * amount) / cut.from}%` }} />
        ))}
      </span>
    </>
  )
}

function countCut({ from, takes, left }: NotionCut): string {
  const count = takes.reduce((sum, { amount }) => sum + amount, 0)
  return texts.take(writeNumber(from), writeNumber(count), writeNumber(left))
}

/** True for a need that there is something to say of: sizes that take none of it say nothing. */
export function isNeeded({ lengths, count, unknown }: Needed): boolean {
  return unknown || lengths.length > 0 || count > 0
}
