import { useSignal } from '@preact/signals'
import { failureText } from '../../state/yours-state.ts'

/** Work that a button begins: whether it is under way, and what to say once it has ended. */
export function useWork() {
  const busy = useSignal(false)
  const said = useSignal('')
  const run = (work: () => Promise<string>) => {
    if (busy.value) return
    busy.value = true
    said.value = ''
    work()
      .catch(failureText)
      .then((text) => {
        said.value = text
        busy.value = false
      })
  }
  return { busy, said, run }
}
