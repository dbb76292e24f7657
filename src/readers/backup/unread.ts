/**
 * Records that this app cannot read are carried as they are, also what JSON has no word for: a number that is none, minus nought, a
 * field without a value, a date. Such a value stands in the file as `{ "$": kind, "of": … }`.
 */
export function toJson(value: unknown): unknown {
  if (value === undefined) return { $: 'undefined' }
  if (Object.is(value, -0)) return { $: 'number', of: '-0' }
  if (typeof value === 'number' && !Number.isFinite(value)) return { $: 'number', of: String(value) }
  if (value instanceof Date) return { $: 'date', of: toJson(value.getTime()) }
  if (Array.isArray(value)) return value.map(toJson)
  if (value === null || typeof value !== 'object') return value
  const fields = Object.fromEntries(Object.entries(value).map(([key, part]) => [key, toJson(part)]))
  return '$' in value ? { $: 'object', of: fields } : fields
}

/** The reverse of toJson. */
export function fromJson(json: unknown): unknown {
  if (Array.isArray(json)) return json.map(fromJson)
  if (json === null || typeof json !== 'object') return json
  if (!('$' in json)) return fieldsFrom(json)
  const of = 'of' in json ? json.of : undefined
  if (json.$ === 'number') return Number(of)
  if (json.$ === 'date') return new Date(fromJson(of) as number)
  return json.$ === 'object' ? fieldsFrom(of as object) : undefined
}

function fieldsFrom(json: object): object {
  return Object.fromEntries(Object.entries(json).map(([key, part]) => [key, fromJson(part)]))
}
