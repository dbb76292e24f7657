import { useEffect } from 'preact/hooks'
import { useLocation } from 'wouter-preact'
import { Screen } from '../../parts/screen.tsx'
import { receive, takeSharedFile } from '../../state/received.ts'
import { words } from '../../words/words.ts'

/** Where a file that was shared to the app arrives, for a moment: it opens where files of its kind are shown. */
export function ReceivedScreen() {
  const [, go] = useLocation()
  useEffect(() => {
    takeSharedFile()
      .then((file) => (file ? receive(file) : '/open-check'))
      .catch(() => '/open-check')
      .then((place) => go(place, { replace: true }))
  }, [])
  return (
    <Screen title={words.sharing.receivedTitle} back="/">
      <p role="status">{words.sharing.receiving}</p>
    </Screen>
  )
}
