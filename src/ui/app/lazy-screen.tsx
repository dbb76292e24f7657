import type { FunctionComponent } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Button } from '../parts/button.tsx'
import { words } from '../words/words.ts'

type Load = () => Promise<FunctionComponent>

/** A screen whose code is fetched when it is first shown; a failed fetch can be tried again. */
export function lazyScreen(load: Load): FunctionComponent {
  let loaded: FunctionComponent | null = null
  return function LazyScreen() {
    const [Screen, setScreen] = useState<FunctionComponent | null>(() => loaded)
    const [failed, setFailed] = useState(false)
    const fetchIt = () => {
      setFailed(false)
      load().then(
        (screen) => {
          loaded = screen
          setScreen(() => screen)
        },
        () => setFailed(true),
      )
    }
    useEffect(() => {
      if (!Screen) fetchIt()
    }, [])
    if (Screen) return <Screen />
    if (failed) return <LoadFailed onRetry={fetchIt} />
    return <p class="loading soft">{words.shell.loading}</p>
  }
}

function LoadFailed({ onRetry }: { onRetry: () => void }) {
  return (
    <div class="loading stack" role="alert">
      <p>{words.shell.loadFailed}</p>
      <Button look="main" onPress={onRetry}>
        {words.shell.retry}
      </Button>
    </div>
  )
}
