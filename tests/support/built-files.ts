import { readdirSync } from 'node:fs'
import { inject } from 'vitest'

/**
 * The files of the built app that a phone keeps, by their paths in it. The service worker keeps itself, and the pictures in the
 * manifest are for the browser's own installing, which has a network.
 */
export function builtFiles(): readonly string[] {
  const folder = inject('appFolder')
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name !== 'service-worker.js')
    .map(({ parentPath, name }) => `${parentPath}/${name}`.slice(folder.length + 1))
    .filter((path) => !path.startsWith('screenshots/'))
}
