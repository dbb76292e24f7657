import { Inflate } from 'fflate'
import { failed, ok, type Result } from '../../core/base/result.ts'
import { shortText } from '../../core/base/short-text.ts'
import { crc32 } from './crc32.ts'
import { BACKUP_LIMITS } from './limits.ts'

/** One file in a zip, as the list at the zip's end has it; nothing of it has been inflated yet. */
export interface ZipEntry {
  readonly name: string
  /** Bytes, as the list claims: of what lies in the zip, and of what will come out. */
  readonly packed: number
  readonly size: number
  readonly crc: number
  readonly method: 0 | 8
  /** Where its own header begins. */
  readonly at: number
}

/** Signatures and lengths from PKWARE's APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16. */
const LOCAL = { signature: 0x04034b50, length: 30 }
const LISTED = { signature: 0x02014b50, length: 46 }
const END = { signature: 0x06054b50, length: 22, longestComment: 0xffff }
const ENCRYPTED = 1

/** What a zip holds, by the list at its end, or why it is no zip that can be read. */
export function listZip(bytes: Uint8Array): Result<readonly ZipEntry[]> {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.length < 4 || view.getUint32(0, true) !== LOCAL.signature) return refuse('is not a zip file')
  const end = endOf(view)
  if (end === null) return refuse('is cut off: its end is missing')
  const count = view.getUint16(end + 10, true)
  if (count > BACKUP_LIMITS.photos + 1) return refuse('holds more files than any backup')
  let at = view.getUint32(end + 16, true)
  const entries: ZipEntry[] = []
  for (let k = 0; k < count; k++) {
    if (at + LISTED.length > end || view.getUint32(at, true) !== LISTED.signature)
      return refuse('is damaged: the list of what it holds cannot be read')
    const entry = listed(view, bytes, at)
    if (typeof entry === 'string') return refuse(entry)
    entries.push(entry)
    at +=
      LISTED.length +
      view.getUint16(at + 28, true) +
      view.getUint16(at + 30, true) +
      view.getUint16(at + 32, true)
  }
  return ok(entries)
}

/** Where the record of the end begins: the last place that has its signature and whose comment ends with the file. */
function endOf(view: DataView): number | null {
  const last = view.byteLength - END.length
  for (let at = last; at >= Math.max(0, last - END.longestComment); at--) {
    if (
      view.getUint32(at, true) === END.signature &&
      at + END.length + view.getUint16(at + 20, true) === view.byteLength
    )
      return at
  }
  return null
}

function listed(view: DataView, bytes: Uint8Array, at: number): ZipEntry | string {
  const nameAt = at + LISTED.length
  const name = new TextDecoder().decode(bytes.subarray(nameAt, nameAt + view.getUint16(at + 28, true)))
  const method = view.getUint16(at + 10, true)
  if (view.getUint16(at + 8, true) & ENCRYPTED)
    return `holds “${shortText(name)}”, which is locked by a password`
  if (method !== 0 && method !== 8) return `holds “${shortText(name)}”, packed in a way that is not used here`
  return {
    name,
    method,
    crc: view.getUint32(at + 16, true),
    packed: view.getUint32(at + 20, true),
    size: view.getUint32(at + 24, true),
    at: view.getUint32(at + 42, true),
  }
}

/**
 * What the entry holds, or null if it is damaged: cut off, not of the size that the list claims, or with another CRC.
 * Stops as soon as more comes out than the list claims. `onPart` hears how many bytes each step has made.
 */
export function unpack(
  bytes: Uint8Array,
  entry: ZipEntry,
  onPart?: (made: number) => void,
): Uint8Array<ArrayBuffer> | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const { at, packed, size, method, crc } = entry
  if (at + LOCAL.length > bytes.length || view.getUint32(at, true) !== LOCAL.signature) return null
  const from = at + LOCAL.length + view.getUint16(at + 26, true) + view.getUint16(at + 28, true)
  if (from + packed > bytes.length) return null
  const inside = bytes.subarray(from, from + packed)
  if (method === 0 && packed !== size) return null
  const content = method === 0 ? new Uint8Array(inside) : inflate(inside, size, onPart)
  return content && crc32(content) === crc ? content : null
}

/** Deflated bytes that are inflated at a time. They grow to 1,032 times as many at most (RFC 1951: 258 bytes in 2 bits). */
const PART_BYTES = 4096

function inflate(
  packed: Uint8Array,
  size: number,
  onPart: (made: number) => void = () => {},
): Uint8Array<ArrayBuffer> | null {
  const out = new Uint8Array(size)
  let made = 0
  const stream = new Inflate((part) => {
    onPart(part.length)
    if (made + part.length <= size) out.set(part, made)
    made += part.length
  })
  try {
    for (let at = 0; at < packed.length && made <= size; at += PART_BYTES)
      stream.push(packed.subarray(at, at + PART_BYTES), at + PART_BYTES >= packed.length)
    return made === size ? out : null
  } catch {
    return null
  }
}

function refuse(message: string) {
  return failed([{ field: 'document', message }])
}
