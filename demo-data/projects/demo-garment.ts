import { readdirSync, readFileSync } from 'node:fs'
import type { Garment } from '../../src/core/garments/index.ts'
import { demoId } from '../../src/core/records/demo.ts'
import { readGarment } from '../../src/readers/model/garment.ts'

const FOLDER = new URL('../garments/', import.meta.url)

/** The garment of this demo id, as it is in a stash that holds the demo. */
export function demoGarment(id: string): Garment {
  const file = readdirSync(FOLDER).find((name) => demoId(name) === `${id}.json`)
  if (!file) throw new Error(`there is no garment ${id}`)
  const read = readGarment(JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8')))
  if (!read.ok) throw new Error(`${file}: ${JSON.stringify(read.faults)}`)
  return { ...read.value, id }
}
