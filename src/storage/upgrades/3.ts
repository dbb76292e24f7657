import type { Upgrade } from './upgrade.ts'

export const toVersion3: Upgrade = (database) => {
  database.createObjectStore('device')
}
