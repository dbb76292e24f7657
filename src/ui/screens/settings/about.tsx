import { useSignal } from '@preact/signals'
import { Button } from '../../parts/button.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { settingsWords } from '../../words/en/settings.ts'
import { words } from '../../words/words.ts'
import { Section } from './section.tsx'

/** Cautions of the trade, what the app is, and whose work it uses. */
export function About() {
  return (
    <>
      <Section title={settingsWords.cautions}>
        <Cautions ids={Object.keys(words.cautions)} />
        <p>{settingsWords.cautionsEnd}</p>
      </Section>
      <Section title={settingsWords.about}>
        <p>{settingsWords.aboutText}</p>
        <p>{settingsWords.licence}</p>
        <Licences />
      </Section>
    </>
  )
}

/** The licences that the build collects; a file of the app itself, read only when she asks. */
function Licences() {
  const text = useSignal<string | null>(null)
  const show = () => {
    fetch('./third-party-licences.md')
      .then((answer) => (answer.ok ? answer.text() : settingsWords.thirdPartyFailed))
      .catch(() => settingsWords.thirdPartyFailed)
      .then((read) => (text.value = read))
  }
  return (
    <>
      <Button onPress={show}>{settingsWords.thirdParty}</Button>
      {text.value !== null && (
        <Sheet title={settingsWords.thirdParty} onClose={() => (text.value = null)}>
          <pre class="licences">{text.value}</pre>
        </Sheet>
      )}
    </>
  )
}
