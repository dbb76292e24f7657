import * as z from 'zod/mini'
import { fieldPath } from '../core/base/field-path.ts'
import { type Fault, failed, ok, type Result } from '../core/base/result.ts'

/** More faults than this tell nobody anything. */
const MOST_FAULTS = 50

/**
 * What the schema makes of foreign data, or one fault for each wrong field: its path and what would be right. Checks of
 * our own in a schema (`z.refine` with an `error`) give their message as it stands, written without the field's name.
 * `above`: where in its file the data stands.
 */
export function readBySchema<Schema extends z.ZodMiniType>(
  schema: Schema,
  json: unknown,
  above: Path = [],
): Result<z.infer<Schema>> {
  const parsed = parse(schema, json)
  if (parsed === null)
    return failed([{ field: fieldPath(above), message: 'has more faults than can be told' }])
  if (parsed.success) return ok(parsed.data)
  const faults = parsed.error.issues.flatMap((issue) => faultsOf(issue, above))
  if (faults.length <= MOST_FAULTS) return failed(faults)
  const rest = { field: 'document', message: `has ${faults.length - MOST_FAULTS} faults more` }
  return failed([...faults.slice(0, MOST_FAULTS), rest])
}

/** null: so much is wrong in one list that the parser itself gives up, with a RangeError. */
function parse<Schema extends z.ZodMiniType>(schema: Schema, json: unknown) {
  try {
    return z.safeParse(schema, json, { reportInput: true })
  } catch (error) {
    if (error instanceof RangeError) return null
    throw error
  }
}

type Issue = z.core.$ZodIssue
type Path = readonly PropertyKey[]

function faultsOf(issue: Issue, above: Path): readonly Fault[] {
  const path = [...above, ...issue.path]
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => ({
        field: fieldPath([...path, key]),
        message: 'is not known here; remove it',
      }))
    case 'invalid_union':
      return unionFaults(issue, path)
    case 'invalid_key':
      return [{ field: fieldPath(path), message: `has a name that ${issue.issues.map(wish).join(' and ')}` }]
    default:
      return [
        {
          field: fieldPath(path),
          message: issue.input === undefined ? `is missing; it ${wish(issue)}` : wish(issue),
        },
      ]
  }
}

/** A union without a match: the faults of the alternative that got farthest, or what all of them wish. */
function unionFaults(issue: z.core.$ZodIssueInvalidUnion, path: Path): readonly Fault[] {
  if ('options' in issue && issue.options) {
    return [{ field: fieldPath(path), message: `must be ${anyOf(issue.options)}` }]
  }
  const farthest = issue.errors.find((issues) => issues.every(({ path: inner }) => inner.length > 0))
  if (farthest) return farthest.flatMap((inner) => faultsOf(inner, path))
  const wishes = new Set(issue.errors.flatMap((issues) => issues.map(wish)))
  return [{ field: fieldPath(path), message: [...wishes].join(', or ') }]
}

/** What the issue says would be right. */
function wish(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return `must be ${NAMES[issue.expected] ?? issue.expected}`
    case 'invalid_value':
      return `must be ${anyOf(issue.values)}`
    case 'too_small':
      if (issue.minimum === 1 && issue.origin !== 'number') return 'must not be empty'
      return `must ${limit(issue.origin, issue.minimum, issue.inclusive ? 'at least' : 'more than')}`
    case 'too_big':
      return `must ${limit(issue.origin, issue.maximum, issue.inclusive ? 'at most' : 'less than')}`
    case 'not_multiple_of':
      return `must be a multiple of ${issue.divisor}`
    default:
      return issue.message
  }
}

const NAMES: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a finite number',
  int: 'a whole number',
  boolean: 'true or false',
  null: 'null',
  array: 'a list',
  tuple: 'a list',
  object: 'an object',
  record: 'an object',
}

function limit(origin: string, bound: number | bigint, comparison: string): string {
  switch (origin) {
    case 'string':
      return `have ${comparison} ${bound} characters`
    case 'array':
      return `have ${comparison} ${bound} entries`
    default:
      return `be ${comparison} ${bound}`
  }
}

function anyOf(values: readonly unknown[]): string {
  return values.map((value) => (typeof value === 'string' ? `“${value}”` : String(value))).join(' or ')
}
