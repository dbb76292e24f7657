import { keptJustNow, keptOffline } from '../state/kept-offline.ts'

/**
 * Keeps the app for use without network, says when it is kept, and tells when a newer version of it lies ready. An update
 * is offered, never forced: it waits until `applyUpdate` is called or every tab of the app is closed.
 */

type Listener = () => void

let registration: ServiceWorkerRegistration | null = null
/** True: the very first worker could not fetch everything, and went. */
let failed = false
let waiting: ServiceWorker | null = null
let ready = false
let asked = false
const listeners = new Set<Listener>()

/** Called once, at the start of the app. Without service workers, or with storage forbidden, the app needs network. */
export async function keepOffline(): Promise<void> {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) {
    keptOffline.value = false
    return
  }
  followController(navigator.serviceWorker)
  // An app on the home screen is rarely loaded anew, so it looks for updates when it comes back into view.
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') lookAgain()
  })
  addEventListener('online', lookAgain)
  await register()
}

/** Without network there is nothing to find, and nothing to say. */
function lookAgain(): void {
  if (failed) void register()
  else registration?.update().catch(() => {})
}

async function register(): Promise<void> {
  failed = false
  try {
    const found = await navigator.serviceWorker.register('./service-worker.js')
    registration = found
    if (found.waiting) offer(found.waiting)
    if (found.active) void sayWhetherKept(found.active)
    else followFirst(found.installing)
    follow(found.installing)
    found.addEventListener('updatefound', () => follow(found.installing))
  } catch (error) {
    keptOffline.value = false
    console.warn('The app is not kept for use without network.', error)
  }
}

/** The very first worker: when it is in charge all is here; it fails where the network breaks off. */
function followFirst(worker: ServiceWorker | null): void {
  keptOffline.value = false
  worker?.addEventListener('statechange', () => {
    if (worker.state === 'activated')
      void sayWhetherKept(worker).then(() => {
        keptJustNow.value = keptOffline.value === true
      })
    if (worker.state === 'redundant') failed = true
  })
}

/** Asks the worker to look at what really lies there. */
async function sayWhetherKept(worker: ServiceWorker): Promise<void> {
  const { port1, port2 } = new MessageChannel()
  const answered = new Promise<boolean>((resolve) => {
    port1.onmessage = ({ data }) => resolve(data === true)
  })
  worker.postMessage('is all kept?', [port2])
  keptOffline.value = await answered
  port1.close()
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
