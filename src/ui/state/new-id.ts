/** A new id that no other device will make: 128 random bits. Works on plain http too, where randomUUID does not. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('')
}
