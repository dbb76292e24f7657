import type { Upgrade } from './upgrade.ts'

export const toVersion1: Upgrade = (database) => {
  database.createObjectStore('garments', { keyPath: 'id' })
  database.createObjectStore('patterns', { keyPath: 'id' })
  database.createObjectStore('drafts')
  database.createObjectStore('settings')
}
