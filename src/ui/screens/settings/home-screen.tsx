import { Button } from '../../parts/button.tsx'
import { install, installOffer, isInstalled, isIos } from '../../state/home-screen.ts'
import { settingsWords } from '../../words/en/settings.ts'

/** How to put the app on the home screen of this device. */
export function HomeScreen() {
  if (isInstalled()) return <p>{settingsWords.homeDone}</p>
  return (
    <>
      {installOffer.value ? (
        <Button onPress={install}>{settingsWords.homeDo}</Button>
      ) : (
        <p>{isIos() ? settingsWords.homeIos : settingsWords.homeOther}</p>
      )}
      <p class="field-hint">{settingsWords.homeWhy}</p>
    </>
  )
}
