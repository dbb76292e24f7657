import { strToU8, Zip, ZipDeflate, ZipPassThrough } from 'fflate'
import { type Backup, FORMAT, FORMAT_VERSION, JSON_NAME, pictureName } from './backup.ts'
import { toJson } from './unread.ts'

/** The backup as a zip, in parts to make a file of. Pictures are read one by one. */
export async function writeBackup(backup: Backup): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = []
  let failure: unknown = null
  const zip = new Zip((error, part) => {
    failure ??= error
    // fflate makes every part anew, in memory of its own.
    parts.push(part as Uint8Array<ArrayBuffer>)
  })
  const json = new ZipDeflate(JSON_NAME, { level: 6 })
  zip.add(json)
  json.push(strToU8(JSON.stringify(documentOf(backup))), true)
  for (const { id, picture } of backup.pictures) {
    const entry = new ZipPassThrough(pictureName(id))
    zip.add(entry)
    entry.push(new Uint8Array(await picture.arrayBuffer()), true)
  }
  zip.end()
  if (failure) throw failure
  return new Blob(parts, { type: 'application/zip' })
}

function documentOf({ device, madeAt, contents, common, settings, drafts }: Backup): object {
  return {
    format: FORMAT,
    version: FORMAT_VERSION,
    device,
    madeAt,
    records: contents.records,
    removed: contents.removed,
    unread: contents.unread.map(({ record, ...ref }) => ({ ...ref, record: toJson(record) })),
    common,
    ...(settings === undefined ? {} : { settings }),
    drafts,
  }
}
