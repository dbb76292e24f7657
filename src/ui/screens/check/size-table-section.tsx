import { useEffect } from 'preact/hooks'
import type { Pattern } from '../../../core/patterns/pattern.ts'
import { Button } from '../../parts/button.tsx'
import { Icon } from '../../parts/icon.tsx'
import { questionKey } from '../../state/answers.ts'
import { draft, query, tell } from '../../state/check-state.ts'
import { settings } from '../../state/settings-state.ts'
import { type CellState, cellKey, fillTable, stopTable, table, tableRuns } from '../../state/size-table.ts'
import { signOf } from '../../state/verdict.ts'
import { writeSmall } from '../../words/format.ts'
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
              {pattern.versions.map(({ id }) => (
                <td key={id}>
                  <Cell version={id} size={size} />
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

function Cell({ version, size }: { version: string; size: string }) {
  const cell = table.value.get(cellKey({ version, size }))
  const here = draft.value.version === version && draft.value.size === size
  return (
    <button
      type="button"
      class={`cell ${cellLook(cell)}`}
      aria-current={here ? 'true' : undefined}
      onClick={() => tell({ version, size })}
    >
      <CellContent cell={cell} />
    </button>
  )
}

function CellContent({ cell }: { cell: CellState | undefined }) {
  if (cell === undefined) return <span>{words.verdict.short.waiting}</span>
  if ('state' in cell) return <span>{words.verdict.short[cell.state]}</span>
  const sign = signOf(cell.lay, settings.value.tapeDoubt)
  const { spare } = cell.lay
  return (
    <>
      <Icon name={SIGN_ICONS[sign]} size={18} />
      <span>
        {words.verdict.short[sign]}
        {spare !== null && <br />}
        {spare !== null && writeSmall(spare, settings.value)}
      </span>
    </>
  )
}

function cellLook(cell: CellState | undefined): string {
  return cell === undefined || 'state' in cell ? '' : `verdict-${signOf(cell.lay, settings.value.tapeDoubt)}`
}
