import { cleanupOutdatedCaches, PrecacheController, PrecacheRoute } from 'workbox-precaching'
import { NavigationRoute, registerRoute } from 'workbox-routing'
import { takeShared } from './share-target.ts'

declare const self: ServiceWorkerGlobalScope & {
  /** Filled in by the build: every file of the app, with its revision. */
  __WB_MANIFEST: Parameters<PrecacheController['addToCacheList']>[0]
}

const files = new PrecacheController()
files.addToCacheList(self.__WB_MANIFEST)
cleanupOutdatedCaches()

registerRoute(new PrecacheRoute(files))
// Whatever page of the app is asked for, the one page answers; its address after # says which screen.
registerRoute(new NavigationRoute(files.createHandlerBoundToURL('index.html')))
takeShared(self.registration.scope)

self.addEventListener('install', (event) => event.waitUntil(fetchAll(event)))

// The first visit is served from the cache at once. An update waits until the user has agreed to it: see
// src/ui/app/offline.ts, which sends the messages.
self.addEventListener('activate', (event) =>
  event.waitUntil(Promise.all([files.activate(event), self.clients.claim()])),
)
self.addEventListener('message', (event) => {
  if (event.data === 'update now') self.skipWaiting()
  if (event.data === 'is all kept?')
    event.waitUntil(isAllKept().then((kept) => event.ports[0]?.postMessage(kept)))
})

/**
 * Fetches every file that is not kept already, side by side: the controller's own way is one after another, and on a
 * slow network each of them would wait for the one before. What came stays when another fails, for the next try.
 */
async function fetchAll(event: ExtendableEvent): Promise<void> {
  const fetched = [...files.getURLsToCacheKeys()].map(async ([url, cacheKey]) => {
    // A file without a hash in its name has a revision in its key, and may be an old one in the browser's own cache.
    const cache = cacheKey === url ? 'default' : 'reload'
    const request = new Request(url, { cache, credentials: 'same-origin' })
    await Promise.all(files.strategy.handleAll({ event, request, params: { cacheKey } }))
  })
  const failed = (await Promise.allSettled(fetched)).find(({ status }) => status === 'rejected')
  if (failed?.status === 'rejected') throw failed.reason
}

async function isAllKept(): Promise<boolean> {
  const cache = await caches.open(files.strategy.cacheName)
  const kept = new Set((await cache.keys()).map(({ url }) => url))
  return [...files.getURLsToCacheKeys().values()].every((key) => kept.has(key))
}
