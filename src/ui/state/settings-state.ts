import { signal } from '@preact/signals'
import { DEFAULT_SETTINGS, type Settings } from '../../storage/stores/settings.ts'

/** What she has chosen for the whole app. */
export const settings = signal<Settings>(DEFAULT_SETTINGS)

export function changeSettings(change: Partial<Settings>): void {
  settings.value = { ...settings.value, ...change }
}

/** Regions where cloth is still measured in inches. */
const INCH_REGIONS = ['US', 'LR', 'MM']

/** Settings to begin with: the units that the browser's language suggests. */
export function firstSettings(language: string): Settings {
  const region = new Intl.Locale(language).region ?? ''
  return { ...DEFAULT_SETTINGS, units: INCH_REGIONS.includes(region) ? 'in' : 'cm' }
}
