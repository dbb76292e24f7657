import { Cautions } from '../../parts/notice.tsx'
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
        <p>
          {words.settings.licence} <a href="./third-party-licences.md">{words.settings.thirdParty}</a>
        </p>
      </Section>
    </>
  )
}
