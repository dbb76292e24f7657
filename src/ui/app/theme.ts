import { effect } from '@preact/signals'
import type { Settings } from '../../storage/stores/settings.ts'
import { settings } from '../state/settings-state.ts'

/** Has the page, and the browser's own bars round it, follow the theme she chose; without a choice they follow the device. */
export function followTheme(): void {
  const bars = [...document.querySelectorAll<HTMLMetaElement>('meta[name="theme-color"]')]
  const colours = { light: colourFor(bars, 'light'), dark: colourFor(bars, 'dark') }
  effect(() => {
    const { theme } = settings.value
    if (theme === 'auto') delete document.documentElement.dataset.theme
    else document.documentElement.dataset.theme = theme
    for (const bar of bars) bar.content = colours[theme === 'auto' ? deviceTheme(bar) : theme]
  })
}

type Colours = Exclude<Settings['theme'], 'auto'>

function colourFor(bars: readonly HTMLMetaElement[], theme: Colours): string {
  return bars.find((bar) => deviceTheme(bar) === theme)?.content ?? ''
}

/** The device's theme that the page's own line is for. */
function deviceTheme({ media }: HTMLMetaElement): Colours {
  return media.includes('dark') ? 'dark' : 'light'
}
