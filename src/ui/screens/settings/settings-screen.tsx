import { Choice } from '../../parts/choice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { changeSettings, settings } from '../../state/settings-state.ts'
import { words } from '../../words/words.ts'
import { About } from './about.tsx'
import { HomeScreen } from './home-screen.tsx'
import { Measuring } from './measuring.tsx'
import { OnThisPhone } from './on-this-phone.tsx'
import { Section } from './section.tsx'
import { YoursCard } from './yours-card.tsx'

/** What holds for the whole app. Every choice takes effect and is stored at once. */
export function SettingsScreen() {
  return (
    <Screen title={words.settings.title}>
      <Section title={words.settings.measuring}>
        <Measuring />
      </Section>
      <Section title={words.settings.looks}>
        <Choice
          name="theme"
          label={words.settings.theme}
          options={(['auto', 'light', 'dark'] as const).map((value) => ({
            value,
            label: words.settings.themes[value],
          }))}
          value={settings.value.theme}
          onChoose={(theme) => changeSettings({ theme })}
        />
      </Section>
      <Section title={words.settings.yours}>
        <YoursCard />
      </Section>
      <Section title={words.settings.storage}>
        <OnThisPhone />
      </Section>
      <Section title={words.settings.home}>
        <HomeScreen />
      </Section>
      <About />
    </Screen>
  )
}
