import * as z from 'zod/mini'
import type { Mm, Percent } from '../../core/base/units.ts'
import { TAPE_DOUBT } from '../../core/planning/doubt.ts'
import { STRETCH_DOUBT } from '../../core/planning/stretch-doubt.ts'
import { orStorageError } from '../errors.ts'
import type { Store } from '../open-store.ts'
import { ALL_SETTINGS } from '../schema.ts'
import { transact } from '../transact.ts'

/** What the user has chosen for the whole app. */
export interface Settings {
  readonly units: 'cm' | 'in'
  /** Inches are shown and stepped in eighths or sixteenths. */
  readonly inchFraction: 8 | 16
  /** `auto` follows the device. */
  readonly theme: 'auto' | 'light' | 'dark'
  /** How far a tape figure of a soft garment may be off, 0 to 50. Common practice: 5 to 10. */
  readonly tapeDoubt: Mm
  /** How far a stretch measured by hand may be off, in points, 0 to 20. Common practice: 5. */
  readonly stretchDoubt: Percent
  /** Least gap between pieces, 0 to 50; a pattern may ask for more. */
  readonly clearance: Mm
  /** CSS dots to a millimetre of this screen, found with a bank card held to it; null: not found yet. */
  readonly dotsPerMm: number | null
  /** Ids of the patterns used last, the last one first. */
  readonly recentPatterns: readonly string[]
  /** When the reminder of backing up was put off, ms since 1970; null: never. */
  readonly backupPutOffAt: number | null
}

export const DEFAULT_SETTINGS: Settings = {
  units: 'cm',
  inchFraction: 8,
  theme: 'auto',
  tapeDoubt: TAPE_DOUBT,
  stretchDoubt: STRETCH_DOUBT,
  clearance: 0,
  dotsPerMm: null,
  recentPatterns: [],
  backupPutOffAt: null,
}

const length = () => z.number().check(z.minimum(0), z.maximum(50))

/** A setting that is missing or makes no sense falls back to its default, by itself. */
const gate = z.object({
  units: z.catch(z.enum(['cm', 'in']), DEFAULT_SETTINGS.units),
  inchFraction: z.catch(z.literal([8, 16]), DEFAULT_SETTINGS.inchFraction),
  theme: z.catch(z.enum(['auto', 'light', 'dark']), DEFAULT_SETTINGS.theme),
  tapeDoubt: z.catch(length(), DEFAULT_SETTINGS.tapeDoubt),
  stretchDoubt: z.catch(z.number().check(z.minimum(0), z.maximum(20)), DEFAULT_SETTINGS.stretchDoubt),
  clearance: z.catch(length(), DEFAULT_SETTINGS.clearance),
  dotsPerMm: z.catch(z.nullable(z.number().check(z.minimum(1), z.maximum(40))), DEFAULT_SETTINGS.dotsPerMm),
  recentPatterns: z.catch(z.array(z.string()), []),
  backupPutOffAt: z.catch(z.nullable(z.number()), null),
})

/** The settings, null when none were ever stored: the app then guesses the units from the language. */
export async function readSettings({ database }: Store<unknown>): Promise<Settings | null> {
  const raw: unknown = await orStorageError(database.get('settings', ALL_SETTINGS))
  return raw === undefined ? null : (gate.safeParse(raw).data ?? DEFAULT_SETTINGS)
}

export function writeSettings(store: Store<unknown>, settings: Settings): Promise<void> {
  return transact(store, ['settings'], (transaction) =>
    transaction.objectStore('settings').put(settings, ALL_SETTINGS),
  )
}
