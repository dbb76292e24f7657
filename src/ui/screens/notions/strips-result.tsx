import type { RowPlan, StripNeed } from '../../../core/rectangles/index.ts'
import { Cautions } from '../../parts/notice.tsx'
import { settings } from '../../state/settings-state.ts'
import { type StripsTyped, stripNeeds, stripsPlan } from '../../state/strips-state.ts'
import { notionWords } from '../../words/en/notions.ts'
import { writeNumber, writeWithUnit } from '../../words/format.ts'
import { piecesWords } from '../../words/notion-words.ts'

const texts = notionWords

/** What the typed figures come to. */
export function StripsResult({ typed }: { typed: StripsTyped }) {
  const nameOf = {
    tiers: (k: number) => texts.tier(writeNumber(k)),
    band: () => texts.band,
    ties: () => texts.tie,
  }
  const needs = stripNeeds(typed, nameOf[typed.making])
  const plan = stripsPlan(typed, needs)
  return (
    <section class="stack" aria-labelledby="strips-result" aria-live="polite">
      <h2 id="strips-result">{texts.comesTo}</h2>
      {plan === 'missing' && <p>{texts.typeAll}</p>}
      {plan === 'all-seam' && <p>{texts.allSeam}</p>}
      {typeof plan === 'object' && needs && <Plan typed={typed} needs={needs} plan={plan} />}
    </section>
  )
}

interface PlanProps {
  readonly typed: StripsTyped
  readonly needs: readonly StripNeed[]
  readonly plan: RowPlan
}

function Plan({ typed, needs, plan }: PlanProps) {
  const units = settings.value
  const [row, depth] =
    typed.run === 'across' ? [typed.clothWidth, typed.clothLength] : [typed.clothLength, typed.clothWidth]
  const said = [writeWithUnit(plan.used, units, 'up'), writeWithUnit(depth ?? 0, units, 'down')] as const
  return (
    <>
      <ul class="stack">
        {needs.map((need, k) => (
          <li key={need.name} class="need-line">
            <h3>{need.copies === 1 ? need.name : `${writeNumber(need.copies)} × ${need.name}`}</h3>
            <p>{texts.flat(writeWithUnit(need.flat, units, 'up'))}</p>
            <p>
              <strong>{texts.stripsOf(piecesWords(plan.strips[k] ?? [], units))}</strong>
              {`, ${texts.tall(writeWithUnit(need.height, units, 'up'))}`}
            </p>
          </li>
        ))}
      </ul>
      <p>
        <strong>{plan.fits ? texts.used(...said) : texts.tooMuch(...said)}</strong>
      </p>
      <RowsDrawing plan={plan} row={row ?? 0} depth={depth ?? 0} />
      <Cautions ids={['blades']} />
    </>
  )
}

/** The strips in their rows, drawn as they lie, rows from top to bottom. */
function RowsDrawing({ plan, row, depth }: { plan: RowPlan; row: number; depth: number }) {
  let top = 0
  const strips = plan.rows.flatMap(({ height, strips: inRow }) => {
    let left = 0
    const drawn = inRow.map(({ length }) => {
      const rect = { x: left, y: top, width: length, height }
      left += length
      return rect
    })
    top += height
    return drawn
  })
  return (
    <svg
      class="cloth-rows"
      role="img"
      aria-label={texts.drawn}
      viewBox={`0 0 ${row} ${Math.max(depth, plan.used)}`}
    >
      <rect class="cloth" x="0" y="0" width={row} height={depth} />
      {strips.map((rect) => (
        <rect key={`${rect.x} ${rect.y}`} class="strip" {...rect} />
      ))}
    </svg>
  )
}
