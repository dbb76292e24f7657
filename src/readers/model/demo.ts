import { type Fault, failed, ok, type Result } from '../../core/base/result.ts'
import { type Demo, demoId } from '../../core/records/demo.ts'
import { readCut, readOffcut } from './cut.ts'
import { readGarment } from './garment.ts'
import { readNotion } from './notion.ts'
import { readProject } from './project.ts'
import { readReservation } from './reservation.ts'

/** The demo as it is shipped: a file a garment and notion, with plain ids, and one of what is made of them, with demo ids. */
export interface DemoFiles {
  readonly garments: readonly unknown[]
  readonly notions: readonly unknown[]
  /** `projects`, `reservations`, `cuts` and `offcuts`, a list each. */
  readonly made: unknown
}

/** The demo from its files, or what is wrong with any of them: all of it or nothing. */
export function readDemo({ garments, notions, made }: DemoFiles): Result<Demo> {
  const faults: Fault[] = []
  const readAll = <T>(name: string, values: unknown, read: (json: unknown) => Result<T>): readonly T[] => {
    if (!Array.isArray(values)) {
      faults.push({ field: name, message: 'must be a list' })
      return []
    }
    return values.flatMap((value, i): readonly T[] => {
      const one = read(value)
      if (one.ok) return [one.value]
      faults.push(...one.faults.map((fault) => ({ ...fault, field: `${name}[${i}].${fault.field}` })))
      return []
    })
  }
  const lists = (made ?? {}) as Readonly<Record<string, unknown>>
  const demo: Demo = {
    garments: readAll('garments', garments, readGarment).map(asDemo),
    notions: readAll('notions', notions, readNotion).map(asDemo),
    projects: readAll('projects', lists.projects, readProject),
    reservations: readAll('reservations', lists.reservations, readReservation),
    cuts: readAll('cuts', lists.cuts, readCut),
    offcuts: readAll('offcuts', lists.offcuts, readOffcut),
  }
  return faults.length > 0 ? failed(faults) : ok(demo)
}

function asDemo<T extends { readonly id: string }>(record: T): T {
  return { ...record, id: demoId(record.id) }
}
