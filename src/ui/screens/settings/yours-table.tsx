import { useSignal } from '@preact/signals'
import type { DecimalSign } from '../../../readers/csv/write-csv.ts'
import { Button } from '../../parts/button.tsx'
import { Choice } from '../../parts/choice.tsx'
import { saveTable } from '../../state/yours-state.ts'
import { yours } from '../../words/en/yours.ts'
import { decimalSign } from '../../words/format.ts'
import { words } from '../../words/words.ts'
import { useWork } from './yours-work.ts'

/** The stash as a CSV file. */
export function SpreadsheetTable() {
  const sign = useSignal<DecimalSign>(decimalSign)
  const { busy, said, run } = useWork()
  const save = async () => {
    const how = await saveTable(sign.value)
    return how === 'downloaded' ? words.sharing.shared : ''
  }
  return (
    <>
      <p>{yours.tableHow}</p>
      <Choice
        name="decimal-sign"
        label={yours.sign}
        options={(['.', ','] as const).map((value) => ({ value, label: yours.signs[value] }))}
        value={sign.value}
        onChoose={(chosen) => (sign.value = chosen)}
      />
      <Button wide disabled={busy.value} onPress={() => run(save)}>
        {yours.tableSave}
      </Button>
      <p class="field-hint" role="status">
        {said.value}
      </p>
    </>
  )
}
