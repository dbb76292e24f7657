import { useSignal } from '@preact/signals'
import { Button } from '../../parts/button.tsx'
import { Cautions } from '../../parts/notice.tsx'
import { Sheet } from '../../parts/sheet.tsx'
import { words } from '../../words/words.ts'
import { Section } from './section.tsx'

/** Cautions of the trade, what the app is, and whose work it uses. */
export function About() {
  return (
    <>
      <Section title={words.settings.cautions}>
        <Cautions ids={Object.keys(words.cautions)} />
        <p>{words.settings.cautionsEnd}</p>
      </Section>
      <Section title={words.settings.about}>
        <p>{words.settings.aboutText}</p>
        <p>{words.settings.licence}</p>
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
      .then((answer) => (answer.ok ? answer.text() : words.settings.thirdPartyFailed))
      .catch(() => words.settings.thirdPartyFailed)
      .then((read) => (text.value = read))
  }
  return (
    <>
      <Button onPress={show}>{words.settings.thirdParty}</Button>
      {text.value !== null && (
        <Sheet title={words.settings.thirdParty} onClose={() => (text.value = null)}>
          <pre class="licences">{text.value}</pre>
        </Sheet>
      )}
    </>
  )
}
