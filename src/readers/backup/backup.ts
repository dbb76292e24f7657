import type { CommonState, Contents } from '../../core/records/record.ts'

/** Everything that one device keeps, as it goes into a file and comes out of it. */
export interface Backup {
  /** Id of the device that made it. */
  readonly device: string
  /** ms since 1970, by that device's clock. */
  readonly madeAt: number
  readonly contents: Contents
  readonly common: readonly CommonState[]
  /** As they are stored: whoever takes them up passes them through their own gates. Absent: none. */
  readonly settings?: unknown
  readonly drafts: Readonly<Record<string, unknown>>
  readonly pictures: readonly Picture[]
}

export interface Picture {
  readonly id: string
  /** JPEG. */
  readonly picture: Blob
}

export const FORMAT = 'cutworth-backup'
/** Of the format. A file of a newer version is refused, one of an older is read. */
export const FORMAT_VERSION = 2
export const JSON_NAME = 'backup.json'

/** Where the zip has a photo's picture. */
export function pictureName(id: string): string {
  return `photos/${encodeURIComponent(id)}.jpg`
}

/** The photo's id; null: that is no name of a picture. */
export function pictureId(name: string): string | null {
  const id = /^photos\/([^/]+)\.jpg$/.exec(name)?.[1]
  if (id === undefined) return null
  try {
    return decodeURIComponent(id)
  } catch {
    return null
  }
}
