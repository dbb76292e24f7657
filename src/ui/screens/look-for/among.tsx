import { MEASURED_KINDS, type MeasuredKind } from '../../../core/garments/index.ts'
import { Tick } from '../../parts/tick.tsx'
import { lookAmong } from '../../state/look-for.ts'
import { lookForWords } from '../../words/en/look-for.ts'
import { writeNumber } from '../../words/format.ts'
import { words } from '../../words/words.ts'

/** The kinds of garment she would cut up. */
export function Among({ kinds }: { kinds: readonly MeasuredKind[] }) {
  const choose = (kind: MeasuredKind, wanted: boolean) =>
    lookAmong(MEASURED_KINDS.filter((each) => (each === kind ? wanted : kinds.includes(each))))
  return (
    <details class="look-for-among unprinted">
      <summary>{lookForWords.among(writeNumber(kinds.length), writeNumber(MEASURED_KINDS.length))}</summary>
      <fieldset>
        <legend class="unseen">{lookForWords.amongLegend}</legend>
        {MEASURED_KINDS.map((kind) => (
          <Tick
            key={kind}
            label={words.garments.kinds[kind]}
            checked={kinds.includes(kind)}
            onChange={(wanted) => choose(kind, wanted)}
          />
        ))}
      </fieldset>
    </details>
  )
}
