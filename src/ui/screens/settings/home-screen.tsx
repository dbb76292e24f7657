import { Button } from '../../parts/button.tsx'
import { install, installOffer, isInstalled, isIos } from '../../state/home-screen.ts'
import { words } from '../../words/words.ts'

/** How to put the app on the home screen of this device. */
export function HomeScreen() {
  if (isInstalled()) return <p>{words.settings.homeDone}</p>
  return (
    <>
      {installOffer.value ? (
        <Button onPress={install}>{words.settings.homeDo}</Button>
      ) : (
        <p>{isIos() ? words.settings.homeIos : words.settings.homeOther}</p>
      )}
      <p class="field-hint">{words.settings.homeWhy}</p>
    </>
  )
}
