import { DEMO_STORES, type Demo } from '../../core/records/demo.ts'
import type { Store } from '../open-store.ts'
import { type RecordWriting, writeRecords } from '../record-writing.ts'

/**
 * Puts what is missing of the demo, all in one transaction; what is there stays as she has made it. Cloth is reserved and
 * cut only where project and garment both come anew: else she may have given the cloth or the pieces another use.
 */
export function putDemo(store: Store<unknown>, demo: Demo): Promise<void> {
  return writeRecords(store, DEMO_STORES, async (writing) => {
    const garments = await putMissing(writing, 'garments', demo.garments)
    const projects = await putMissing(writing, 'projects', demo.projects)
    await putMissing(writing, 'notions', demo.notions)
    const isNew = ({ garment, project }: { readonly garment: string; readonly project: string }) =>
      garments.has(garment) && projects.has(project)
    await putMissing(writing, 'reservations', demo.reservations.filter(isNew))
    const cuts = await putMissing(writing, 'cuts', demo.cuts.filter(isNew))
    const left = demo.offcuts.filter(({ cut }) => cuts.has(cut))
    await putMissing(writing, 'offcuts', left)
  })
}

/** Ids of those that were missing. */
async function putMissing<Name extends keyof Demo>(
  writing: RecordWriting,
  name: Name,
  records: Demo[Name],
): Promise<ReadonlySet<string>> {
  const missing = new Set<string>()
  for (const record of records) {
    if (await writing.kept(name, record.id)) continue
    await writing.put(name, record)
    missing.add(record.id)
  }
  return missing
}
