import type { Contents } from '../../../core/records/index.ts'
import type { MergePreview } from '../../../storage/backup/merge.ts'
import { yours } from '../../words/en/yours.ts'
import { conflictWords, differenceWords, settlementWords } from '../../words/yours-words.ts'

/** What merging would bring, change and take away, and what has to give way, by the records' names. */
export function MergeList({ merge, file }: { merge: MergePreview; file: Contents }) {
  const from = [file, merge.before]
  const { differences, conflicts, settlements } = merge
  if (differences.length + conflicts.length + settlements.length === 0) return <p>{yours.mergeNothing}</p>
  return (
    <div>
      <h4 class="merge-title">{yours.mergeTitle}</h4>
      {(['comes', 'changes', 'goes'] as const).map((what) => (
        <Named key={what} title={yours[what]} lines={differenceWords(differences, what, from)} />
      ))}
      <Named
        title={yours.conflicts}
        hint={yours.conflictsHow}
        open
        lines={conflicts.map((each) => conflictWords(each, merge.before, file))}
      />
      <Named title={yours.settled} open lines={settlements.map((each) => settlementWords(each, from))} />
    </div>
  )
}

interface NamedProps {
  readonly title: string
  readonly lines: readonly string[]
  readonly hint?: string
  readonly open?: boolean
}

/** A list folded under its title and count; nothing if it is empty. */
function Named({ title, lines, hint, open = false }: NamedProps) {
  if (lines.length === 0) return null
  return (
    <details class="merge-list" open={open}>
      <summary>
        {title}: {lines.length}
      </summary>
      {hint && <p class="field-hint">{hint}</p>}
      <ul>
        {lines.map((line, k) => (
          <li key={`${k} ${line}`}>{line}</li>
        ))}
      </ul>
    </details>
  )
}
