import type { NotionCut } from '../../core/notions/plan.ts'
import { withCutBack, withoutCut } from '../../core/notions/take.ts'
import type { Project, TakenNotion } from '../../core/stash/project.ts'
import type { Store } from '../open-store.ts'
import { writeRecords } from '../record-writing.ts'

/** The project or a length is no longer as it was when the cut was planned. Nothing was written; plan again. */
export class NotionsChanged extends Error {
  override name = 'NotionsChanged'
}

/** Takes the cuts from the notions owned and notes them in the project, all or none. Rejects with `NotionsChanged`. */
export function takeNotions(
  store: Store<unknown>,
  project: string,
  cuts: readonly NotionCut[],
): Promise<void> {
  return writeRecords(store, ['projects', 'notions'], async (writing) => {
    const into = await writing.get('projects', project)
    if (!into) throw new NotionsChanged(`there is no project ${project}`)
    for (const cut of cuts) {
      const owned = await writing.get('notions', cut.notion)
      const rest = owned ? withoutCut(owned, cut) : null
      if (!rest) throw new NotionsChanged(`notion ${cut.notion} has no ${cut.from} any more`)
      await writing.put('notions', rest)
    }
    await writing.put('projects', { ...into, taken: [...into.taken, ...cuts.flatMap(takenIn)] })
  })
}

/** Takes `takeNotions` back. A notion or project removed since then stays removed. */
export function giveBackNotions(
  store: Store<unknown>,
  project: string,
  cuts: readonly NotionCut[],
): Promise<void> {
  return writeRecords(store, ['projects', 'notions'], async (writing) => {
    for (const cut of cuts) {
      const owned = await writing.get('notions', cut.notion)
      if (owned) await writing.put('notions', withCutBack(owned, cut))
    }
    const from = await writing.get('projects', project)
    if (from) await writing.put('projects', withoutTaken(from, cuts.flatMap(takenIn)))
  })
}

function takenIn({ notion, takes }: NotionCut): readonly TakenNotion[] {
  return takes.map(({ need, amount }) => ({ need, notion, amount }))
}

/** Without one entry for each that is given back. */
function withoutTaken(project: Project, back: readonly TakenNotion[]): Project {
  const taken = [...project.taken]
  for (const { need, notion, amount } of back) {
    const at = taken.findLastIndex(
      (one) => one.need === need && one.notion === notion && one.amount === amount,
    )
    if (at >= 0) taken.splice(at, 1)
  }
  return { ...project, taken }
}
