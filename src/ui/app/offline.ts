/**
 * Keeps the app for use without network, and tells when a newer version of it lies ready. An update is offered,
 * never forced: it waits until `applyUpdate` is called or every tab of the app is closed.
 */

type Listener = () => void

let waiting: ServiceWorker | null = null
let ready = false
let asked = false
const listeners = new Set<Listener>()

/** Called once, at the start of the app. Without service workers, or with storage forbidden, the app needs network. */
export async function keepOffline(): Promise<void> {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return
  followController(navigator.serviceWorker)
  try {
    const registration = await navigator.serviceWorker.register('./service-worker.js')
    if (registration.waiting) offer(registration.waiting)
    follow(registration.installing)
    registration.addEventListener('updatefound', () => follow(registration.installing))
    lookWhenShown(registration)
  } catch (error) {
    console.warn('The app is not kept for use without network.', error)
  }
}

/** Calls back once a newer version lies ready, at once if it does already. Returns how to stop. */
export function onUpdateReady(listener: Listener): () => void {
  listeners.add(listener)
  if (ready) listener()
  return () => listeners.delete(listener)
}

/** Changes to the newer version and loads the page anew. What is stored stays; what is not stored is lost. */
export function applyUpdate(): void {
  asked = true
  if (waiting) waiting.postMessage('update now')
  else location.reload()
}

function offer(worker: ServiceWorker | null): void {
  waiting = worker
  ready = true
  for (const listener of listeners) listener()
}

/** A worker installed beside one that is in charge is an update; the very first one is not. */
function follow(worker: ServiceWorker | null): void {
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'installed' && navigator.serviceWorker.controller) offer(worker)
  })
}

/** Another tab may have changed to the newer version: this one then only has to be loaded anew. */
function followController(container: ServiceWorkerContainer): void {
  let first = container.controller === null
  container.addEventListener('controllerchange', () => {
    if (asked) location.reload()
    else if (!first) offer(null)
    first = false
  })
}

/** An app on the home screen is rarely loaded anew, so it looks for updates when it comes back into view. */
function lookWhenShown(registration: ServiceWorkerRegistration): void {
  document.addEventListener('visibilitychange', () => {
    // Without network there is nothing to find, and nothing to say.
    if (document.visibilityState === 'visible') registration.update().catch(() => {})
  })
}
