import { signal } from '@preact/signals'

/** True: every file of the app is on this device. null: not known yet. */
export const keptOffline = signal<boolean | null>(null)

/** True from when the last file has come until she has put away what is said of it. */
export const keptJustNow = signal(false)
