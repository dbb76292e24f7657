import type { Upgrade } from './upgrade.ts'

export const toVersion2: Upgrade = (database) => {
  for (const name of ['projects', 'notions', 'photos', 'pictures'])
    database.createObjectStore(name, { keyPath: 'id' })
  for (const name of ['reservations', 'cuts']) {
    const store = database.createObjectStore(name, { keyPath: 'id' })
    store.createIndex('garment', 'value.garment')
    store.createIndex('project', 'value.project')
  }
  database.createObjectStore('offcuts', { keyPath: 'id' }).createIndex('garment', 'value.garment')
  database.createObjectStore('removed', { keyPath: ['store', 'id'] })
}
