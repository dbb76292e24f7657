/** Equal for equal JSON values, in whichever order their fields are. Nothing for what is absent. */
export function canonical(value: unknown): string {
  const text = JSON.stringify(value, (_key, part: unknown) =>
    part !== null && typeof part === 'object' && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  )
  return text ?? ''
}
