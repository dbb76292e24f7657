import { describe, expectTypeOf, it } from 'vitest'
import type * as z from 'zod/mini'
import type { Garment } from '../../../src/core/garments/garment.ts'
import type { Pattern } from '../../../src/core/patterns/pattern.ts'
import type { garmentSchema } from '../../../src/readers/model/garment.ts'
import type { patternSchema } from '../../../src/readers/model/pattern.ts'

/** The model's interfaces are read-only all through; the schemas' types are not. */
type Frozen<T> = T extends (infer Item)[]
  ? T extends [infer First, infer Second]
    ? readonly [Frozen<First>, Frozen<Second>]
    : readonly Frozen<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Frozen<T[Key]> }
    : T

/** Held by the compiler (`npm run types`): a field added to the model and not to its schema is an error here. */
describe('schemas', () => {
  it('have the type of the model', () => {
    expectTypeOf<Frozen<z.infer<typeof patternSchema>>>().toEqualTypeOf<Pattern>()
    expectTypeOf<Frozen<z.infer<typeof garmentSchema>>>().toEqualTypeOf<Garment>()
  })
})
