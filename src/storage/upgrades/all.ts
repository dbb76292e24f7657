import { toVersion1 } from './1.ts'
import { toVersion2 } from './2.ts'
import { toVersion3 } from './3.ts'
import type { Upgrade } from './upgrade.ts'

/** In order: the first leads from nothing to version 1. Released upgrades never change; a new one is added. */
export const UPGRADES: readonly Upgrade[] = [toVersion1, toVersion2, toVersion3]
