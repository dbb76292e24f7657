import { failed, ok, type Result } from '../../core/base/result.ts'
import { shortText } from '../../core/base/short-text.ts'
import { type Backup, JSON_NAME, type Picture, pictureId, pictureName } from './backup.ts'
import { jsonFault } from './json-shape.ts'
import { BACKUP_LIMITS } from './limits.ts'
import { type BackupFault, MOST_TOLD, readDocument } from './read-document.ts'
import { listZip, unpack, type ZipEntry } from './unzip.ts'
import { listFault } from './zip-list.ts'

export type { BackupFault } from './read-document.ts'

export type BackupReading =
  | { readonly ok: true; readonly value: Backup }
  | { readonly ok: false; readonly faults: readonly BackupFault[] }

/** The backup in a zip, or why the whole of it is refused. Nothing is inflated before its size is known to be sensible. */
export function readBackup(bytes: Uint8Array): BackupReading {
  const size = sizeFault(bytes.length)
  if (size !== null) return refuse(size)
  const listed = listZip(bytes)
  if (!listed.ok) return listed
  const odd = listFault(listed.value, bytes.length)
  if (odd) return refuse(odd)
  const json = readJson(bytes, listed.value)
  if (!json.ok) return json
  const document = readDocument(json.value)
  if (!document.ok) return document
  const { photos } = document.value.contents.records
  const missing = missingPictures(photos, listed.value)
  if (missing.length > 0) return { ok: false, faults: missing }
  const pictures = readPictures(bytes, listed.value)
  if (!pictures.ok) return pictures
  return ok({ ...document.value, pictures: pictures.value })
}

/** Why a file of so many bytes is no backup; null: it may be one. */
export function sizeFault(bytes: number): string | null {
  return bytes > BACKUP_LIMITS.file ? 'is larger than any backup' : null
}

function readJson(bytes: Uint8Array, entries: readonly ZipEntry[]): Result<unknown> {
  const entry = entries.find(({ name }) => name === JSON_NAME)
  const content = entry && unpack(bytes, entry)
  if (!content) return refuse(`is damaged: “${JSON_NAME}” in it cannot be unpacked`)
  const shape = jsonFault(content)
  if (shape) return refuse(`holds a “${JSON_NAME}” that ${shape}`)
  try {
    return ok(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(content)))
  } catch {
    return refuse(`is damaged: “${JSON_NAME}” in it is not JSON`)
  }
}

function missingPictures(
  photos: readonly { readonly id: string }[],
  entries: readonly ZipEntry[],
): readonly BackupFault[] {
  const there = new Set(entries.map(({ name }) => name))
  const missing = photos.filter(({ id }) => !there.has(pictureName(id)))
  return missing
    .slice(0, MOST_TOLD)
    .map(({ id }) => ({ field: pictureName(id), message: 'is missing: the photo has no picture' }))
}

/** A JPEG begins with its mark “start of image” and the first byte of the next mark (ITU-T T.81, B.1.1.3). */
const JPEG = [0xff, 0xd8, 0xff]

function readPictures(bytes: Uint8Array, entries: readonly ZipEntry[]): Result<readonly Picture[]> {
  const pictures: Picture[] = []
  for (const entry of entries) {
    const id = pictureId(entry.name)
    if (id === null) continue
    const name = shortText(entry.name)
    const content = unpack(bytes, entry)
    if (!content) return refuse(`is damaged: “${name}” in it cannot be unpacked`)
    if (JPEG.some((byte, k) => content[k] !== byte))
      return refuse(`holds “${name}”, which is no JPEG picture`)
    pictures.push({ id, picture: new Blob([content], { type: 'image/jpeg' }) })
  }
  return ok(pictures)
}

function refuse(message: string): Result<never> {
  return failed([{ field: 'document', message }])
}
