import { useEffect } from 'preact/hooks'
import type { Garment } from '../../../core/garments/index.ts'
import type { Pattern, Version } from '../../../core/patterns/pattern.ts'
import { Button } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { questionKey } from '../../state/answers.ts'
import { draft, query, tell } from '../../state/check-state.ts'
import { live } from '../../state/live-check.ts'
import { settings } from '../../state/settings-state.ts'
import { type CellState, cellKey, fillTable, stopTable, table, tableRuns } from '../../state/size-table.ts'
import { type Sign, signOf } from '../../state/verdict.ts'
import { spareFigure } from '../../words/verdict-words.ts'
import { words } from '../../words/words.ts'
import { SIGN_ICONS } from './verdict-strip.tsx'

/** Every size and version of the pattern with its own verdict, computed one after another, the likeliest first. */
export function SizeTable({ pattern }: { pattern: Pattern }) {
  const asked = query.value
  const garmentKey = asked.ask ? questionKey({ ...asked.question, size: '', version: '' }) : ''
  useEffect(() => {
    if (garmentKey !== '') void fillTable()
    return stopTable
  }, [garmentKey])
  if (!asked.ask || pattern.sizes.length * pattern.versions.length < 2) return null
  return (
    <section class="stack" aria-labelledby="sizes-title">
      <h2 id="sizes-title">{words.verdict.sizesTitle}</h2>
      <table class="size-table" aria-labelledby="sizes-title">
        <thead>
          <tr>
            <th scope="col">{words.verdict.sizesSize}</th>
            {pattern.versions.map(({ id, name }) => (
              <th key={id} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {pattern.sizes.map((size) => (
            <tr key={size}>
              <th scope="row">{size}</th>
              {pattern.versions.map((version) => (
                <td key={version.id}>
                  <Cell version={version} size={size} garment={asked.question.garment} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {tableRuns.value ? (
        <Button icon="stop" onPress={stopTable}>
          {words.verdict.sizesStop}
        </Button>
      ) : (
        table.value.size < pattern.sizes.length * pattern.versions.length && (
          <Button onPress={() => void fillTable()}>{words.verdict.sizesGo}</Button>
        )
      )}
    </section>
  )
}

interface CellProps {
  readonly version: Version
  readonly size: string
  readonly garment: Garment
}

/** The verdict on one size and version; tapping it makes it the chosen one. */
function Cell({ version, size, garment }: CellProps) {
  const here = draft.value.version === version.id && draft.value.size === size
  const now = live.value
  // The chosen cell shows what the verdict says, which may have searched longer than the table does.
  const cell =
    here && now.state === 'answered' ? now.answer : table.value.get(cellKey({ version: version.id, size }))
  const sign = cell && 'lay' in cell ? signOf(cell, garment, settings.value.tapeDoubt) : null
  const lines = cellWords(cell, sign)
  return (
    <button
      type="button"
      class={sign ? `cell verdict-${sign}` : 'cell'}
      aria-current={here ? 'true' : undefined}
      aria-label={words.verdict.cell(size, version.name, lines.join(', '))}
      onClick={() => tell({ version: version.id, size })}
    >
      {sign && <Icon name={SIGN_ICONS[sign]} size={18} />}
      <span>
        {lines.map((line) => (
          <span key={line} class="cell-line">
            {line}
          </span>
        ))}
      </span>
    </button>
  )
}

/** What a cell says, a line each. */
function cellWords(cell: CellState | undefined, sign: Sign | null): readonly string[] {
  if (cell === undefined) return [words.verdict.short.waiting]
  if ('state' in cell) return [words.verdict.short[cell.state]]
  const spare = spareFigure(cell.lay, settings.value)
  const word = words.verdict.short[sign ?? 'failed']
  return spare === null ? [word] : [word, spare]
}
