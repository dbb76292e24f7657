import { effect } from '@preact/signals'
import { settings } from '../state/settings-state.ts'

/** Has the page follow the theme she chose; without a choice it follows the device. */
export function followTheme(): void {
  effect(() => {
    const { theme } = settings.value
    if (theme === 'auto') delete document.documentElement.dataset.theme
    else document.documentElement.dataset.theme = theme
  })
}
