import { Choice } from '../../parts/choice.tsx'
import { Screen } from '../../parts/screen.tsx'
import { changeSettings, settings } from '../../state/settings-state.ts'
import { settingsWords } from '../../words/en/settings.ts'
import { About } from './about.tsx'
import { HomeScreen } from './home-screen.tsx'
import { Measuring } from './measuring.tsx'
import { OnThisPhone } from './on-this-phone.tsx'
import { Section } from './section.tsx'
import { YoursCard } from './yours-card.tsx'

/** What holds for the whole app. Every choice takes effect and is stored at once. */
export function SettingsScreen() {
  return (
    <Screen title={settingsWords.title}>
      <Section title={settingsWords.measuring}>
        <Measuring />
      </Section>
      <Section title={settingsWords.looks}>
        <Choice
          name="theme"
          label={settingsWords.theme}
          options={(['auto', 'light', 'dark'] as const).map((value) => ({
            value,
            label: settingsWords.themes[value],
          }))}
          value={settings.value.theme}
          onChoose={(theme) => changeSettings({ theme })}
        />
      </Section>
      <Section title={settingsWords.yours}>
        <YoursCard />
      </Section>
      <Section title={settingsWords.storage}>
        <OnThisPhone />
      </Section>
      <Section title={settingsWords.home}>
        <HomeScreen />
      </Section>
      <About />
    </Screen>
  )
}
