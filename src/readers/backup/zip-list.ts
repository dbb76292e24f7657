import { shortText } from '../../core/base/short-text.ts'
import { JSON_NAME, pictureId } from './backup.ts'
import { BACKUP_LIMITS } from './limits.ts'
import type { ZipEntry } from './unzip.ts'

/** What makes the list of the zip one that no backup has, if anything. `length`: bytes of the whole zip. */
export function listFault(entries: readonly ZipEntry[], length: number): string | null {
  // The photos and the one JSON.
  if (entries.length > BACKUP_LIMITS.photos + 1) return 'holds more files than any backup'
  const names = new Set<string>()
  let [packed, size] = [0, 0]
  for (const entry of entries) {
    const { name } = entry
    if (names.has(name)) return `holds “${shortText(name)}” twice`
    names.add(name)
    packed += entry.packed
    size += entry.size
  }
  if (!names.has(JSON_NAME)) return `is not a backup of this app: it holds no “${JSON_NAME}”`
  for (const entry of entries) {
    const odd = entryFault(entry)
    if (odd) return odd
  }
  if (packed > length) return 'is damaged: its files lie upon one another'
  if (size > BACKUP_LIMITS.contents) return 'would grow larger than any backup'
  return null
}

function entryFault({ name, size, packed }: ZipEntry): string | null {
  const { json, photo, leastShare, leastJsonShare, smallJson } = BACKUP_LIMITS
  if (name === JSON_NAME) {
    if (size > json) return `holds a “${name}” that is larger than any backup’s`
    if (size > smallJson && packed < size * leastJsonShare)
      return `holds a “${name}” that would grow larger than any backup’s`
    return null
  }
  const told = shortText(name)
  if (pictureId(name) === null) return `holds “${told}”, which no backup of this app does`
  if (size > photo || packed < size * leastShare)
    return `holds “${told}”, which would grow larger than any photo`
  return null
}
