import type { RecordStore, Records } from './record.ts'

/** Ids of demo records begin with this; those of the user's own never do. */
const PREFIX = 'demo-'

export function demoId(id: string): string {
  return `${PREFIX}${id}`
}

/** True for the id of a record that came with the demo. */
export function isDemoId(id: string): boolean {
  return id.startsWith(PREFIX)
}

export const DEMO_STORES = [
  'garments',
  'notions',
  'projects',
  'reservations',
  'cuts',
  'offcuts',
] as const satisfies readonly RecordStore[]

/** Things to try the app with. */
export type Demo = { readonly [Name in (typeof DEMO_STORES)[number]]: readonly Records[Name][] }
