import { describe, expectTypeOf, it } from 'vitest'
import type * as z from 'zod/mini'
import type { Garment } from '../../../src/core/garments/garment.ts'
import type { Notion } from '../../../src/core/notions/notion.ts'
import type { Pattern } from '../../../src/core/patterns/pattern.ts'
import type { Cut, Offcut } from '../../../src/core/stash/cut.ts'
import type { Photo } from '../../../src/core/stash/photo.ts'
import type { Project } from '../../../src/core/stash/project.ts'
import type { Reservation } from '../../../src/core/stash/reservation.ts'
import type { cutSchema, offcutSchema } from '../../../src/readers/model/cut.ts'
import type { garmentSchema } from '../../../src/readers/model/garment.ts'
import type { notionSchema } from '../../../src/readers/model/notion.ts'
import type { patternSchema } from '../../../src/readers/model/pattern.ts'
import type { photoSchema } from '../../../src/readers/model/photo.ts'
import type { projectSchema } from '../../../src/readers/model/project.ts'
import type { reservationSchema } from '../../../src/readers/model/reservation.ts'

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
    expectTypeOf<Frozen<z.infer<typeof projectSchema>>>().toEqualTypeOf<Project>()
    expectTypeOf<Frozen<z.infer<typeof reservationSchema>>>().toEqualTypeOf<Reservation>()
    expectTypeOf<Frozen<z.infer<typeof cutSchema>>>().toEqualTypeOf<Cut>()
    expectTypeOf<Frozen<z.infer<typeof offcutSchema>>>().toEqualTypeOf<Offcut>()
    expectTypeOf<Frozen<z.infer<typeof notionSchema>>>().toEqualTypeOf<Notion>()
    expectTypeOf<Frozen<z.infer<typeof photoSchema>>>().toEqualTypeOf<Photo>()
  })
})
