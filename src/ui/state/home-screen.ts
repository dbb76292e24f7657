import { signal } from '@preact/signals'

/** The event by which some browsers offer to install an app; not yet in TypeScript's own library. */
interface InstallOffer extends Event {
  prompt(): Promise<unknown>
}

/** What the browser offers, to be taken up when she likes; null: it offers nothing. */
export const installOffer = signal<InstallOffer | null>(null)

/** Begins to listen; called once, early, for the offer comes when it likes. */
export function followInstallOffer(): void {
  addEventListener('beforeinstallprompt', (event) => {
    event.preventDefault()
    installOffer.value = event as InstallOffer
  })
  addEventListener('appinstalled', () => {
    installOffer.value = null
  })
}

export function install(): void {
  const offer = installOffer.value
  installOffer.value = null
  // She may say no; the browser then offers again when it thinks fit.
  offer?.prompt().catch(() => {})
}

/** True when the app was opened from the home screen. */
export function isInstalled(): boolean {
  return matchMedia('(display-mode: standalone)').matches
}

/** Safari on phones and tablets has its own way, and offers nothing by itself. A tablet says that it is a Mac, which has no touch. */
export function isIos(): boolean {
  const { userAgent, maxTouchPoints } = navigator
  return /iPhone|iPad|iPod/.test(userAgent) || (/Macintosh/.test(userAgent) && maxTouchPoints > 1)
}
