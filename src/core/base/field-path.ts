import { shortText } from './short-text.ts'

const PLAIN_KEY = /^[A-Za-z_][\w-]*$/

/** Of a key, signs: longer than any name that a gate lets through, so that only what is refused is shortened. */
const LONGEST_KEY = 200

/**
 * A field's path as the reader of a file would write it: `pieces[2].shapes.M.width`; a key with other signs in it is
 * quoted: `shapes["2 XL"].width`. Of a key longer than any name only the beginning. The whole document is `document`.
 */
export function fieldPath(parts: readonly PropertyKey[]): string {
  const path = parts.reduce<string>((sofar, part) => {
    if (typeof part === 'number') return `${sofar}[${part}]`
    const key = shortText(String(part), LONGEST_KEY)
    if (!PLAIN_KEY.test(key)) return `${sofar}[${JSON.stringify(key)}]`
    return sofar === '' ? key : `${sofar}.${key}`
  }, '')
  return path === '' ? 'document' : path
}

const PART = /\[(\d+)\]|\[("(?:[^"\\]|\\.)*")\]|([A-Za-z_][\w-]*)/g

/** The parts of a path that `fieldPath` wrote; `document` is a path of one part. */
export function fieldParts(path: string): readonly (string | number)[] {
  return [...path.matchAll(PART)].map(([, index, quoted, plain]) =>
    index !== undefined ? Number(index) : quoted !== undefined ? JSON.parse(quoted) : (plain as string),
  )
}
