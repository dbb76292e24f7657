import { registerRoute } from 'workbox-routing'

/*
 * Another app shares a file to this one: the device posts it to the address that the manifest names (`share_target`). No
 * server is there to take it. It waits in a cache of its own until the page, opened at its screen for files that came
 * from outside, takes it from there (src/ui/state/received.ts has the same names).
 */

/** As the manifest has it, relative to the worker's own folder. */
const POSTED_TO = 'share'
const FIELD = 'file'
const CACHE = 'cutworth-shared'
const KEPT_AS = 'shared-file'
/** Where the page shows what came. */
const SHOWN_AT = '#/received'

/** Takes files that are shared to the app. `scope`: the address of the app's folder. */
export function takeShared(scope: string): void {
  const { pathname } = new URL(POSTED_TO, scope)
  registerRoute(
    ({ url, sameOrigin }) => sameOrigin && url.pathname === pathname,
    async ({ request }) => {
      await keep(request, new URL(KEPT_AS, scope)).catch(() => {})
      return Response.redirect(new URL(SHOWN_AT, scope).href, 303)
    },
    'POST',
  )
}

/** A text that was shared is as good as a file of it. */
async function keep(request: Request, address: URL): Promise<void> {
  const form = await request.formData()
  const given = form.get(FIELD) ?? form.get('text')
  if (given === null) return
  const cache = await caches.open(CACHE)
  await cache.put(address, new Response(given))
}
