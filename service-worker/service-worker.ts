import { cleanupOutdatedCaches, createHandlerBoundToURL, precacheAndRoute } from 'workbox-precaching'
import { NavigationRoute, registerRoute } from 'workbox-routing'

declare const self: ServiceWorkerGlobalScope & {
  /** Filled in by the build: every file of the app, with its revision. */
  __WB_MANIFEST: Parameters<typeof precacheAndRoute>[0]
}

precacheAndRoute(self.__WB_MANIFEST)
cleanupOutdatedCaches()

// Whatever page of the app is asked for, the one page answers; its address after # says which screen.
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')))

// The first visit is served from the cache at once. An update waits until the user has agreed to it: see
// src/ui/app/offline.ts, which sends the message.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()))
self.addEventListener('message', ({ data }) => {
  if (data === 'update now') self.skipWaiting()
})
