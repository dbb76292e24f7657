/** One thing wrong with what somebody gave us: which field, and what would be right. */
export interface Fault {
  /** Path of the field as the reader of the file would write it: `pieces[2].outline`. */
  readonly field: string
  /** What is wrong and what would be right, without the field's name. */
  readonly message: string
}

/** Either a value or the reasons why there is none. Used at borders; inside, broken invariants throw. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly faults: readonly Fault[] }

export function ok<T>(value: T): Result<T> {
  return { ok: true, value }
}

export function failed(faults: readonly Fault[]): Result<never> {
  return { ok: false, faults }
}
