import { BACKUP_LIMITS } from './limits.ts'

const [QUOTE, COMMA, BACKSLASH] = [0x22, 0x2c, 0x5c]
const [LIST, LIST_END, OBJECT, OBJECT_END] = [0x5b, 0x5d, 0x7b, 0x7d]

/** A record is the fourth bracket from outside: the document, its shelves, a shelf, a record. */
const RECORD_DEPTH = 4

/**
 * Why this JSON text, as UTF-8, is refused before it is parsed, which could take more memory than there is; null: it is
 * of a size that can be parsed. Whether it is JSON at all is not asked. Stops at the first sign too many.
 */
export function jsonFault(text: Uint8Array): string | null {
  const { depth: deepest, values: most, recordValues } = BACKUP_LIMITS
  /** How many values there were when each open bracket began. */
  const begun: number[] = []
  let values = 0
  let quoted = false
  for (let at = 0; at < text.length; at++) {
    const sign = text[at]
    if (quoted) {
      if (sign === BACKSLASH) at++
      else if (sign === QUOTE) quoted = false
    } else if (sign === QUOTE) quoted = true
    else if (sign === COMMA) values++
    else if (sign === LIST || sign === OBJECT) {
      begun.push(values++)
      if (begun.length > deepest) return 'is nested deeper than any backup'
    } else if (sign === LIST_END || sign === OBJECT_END) {
      const isWithin = begun.length >= RECORD_DEPTH
      const before = begun.pop() ?? 0
      if (isWithin && values - before > recordValues)
        return 'has a record that holds more than any garment has'
    }
    if (values > most) return 'holds more than any backup'
  }
  return null
}
