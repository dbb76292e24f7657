import { Button, type ButtonLook } from '../../parts/button.tsx'
import { backUp } from '../../state/yours-state.ts'
import { yours } from '../../words/en/yours.ts'
import { useWork } from './yours-work.ts'

/** Makes a backup and hands it over; says where it went. */
export function BackUpButton({ look = 'main', label = yours.backUp }: { look?: ButtonLook; label?: string }) {
  const { busy, said, run } = useWork()
  return (
    <>
      <Button
        look={look}
        icon="share"
        wide
        disabled={busy.value}
        onPress={() => run(async () => yours.backedUp[await backUp()])}
      >
        {label}
      </Button>
      <p class="field-hint" role="status">
        {busy.value ? yours.backingUp : said.value}
      </p>
    </>
  )
}
