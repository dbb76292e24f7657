import type { NotionCut } from '../../core/notions/plan.ts'
import { withCutBack, withoutCut } from '../../core/notions/take.ts'
import type { Project, TakenNotion } from '../../core/stash/project.ts'
import type { Store } from '../open-store.ts'
import { transact } from '../transact.ts'
import { putInto } from './collection.ts'

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
  return transact(store, ['projects', 'notions'], async (transaction) => {
    const [projects, notions] = [transaction.objectStore('projects'), transaction.objectStore('notions')]
    const into = (await projects.get(project))?.value
    if (!into) throw new NotionsChanged(`there is no project ${project}`)
    for (const cut of cuts) {
      const owned = (await notions.get(cut.notion))?.value
      const rest = owned ? withoutCut(owned, cut) : null
      if (!rest) throw new NotionsChanged(`notion ${cut.notion} has no ${cut.from} any more`)
      await putInto(notions, rest, store.now())
    }
    await putInto(projects, { ...into, taken: [...into.taken, ...cuts.flatMap(takenIn)] }, store.now())
  })
}

/** Takes `takeNotions` back. A notion or project removed since then stays removed. */
export function giveBackNotions(
  store: Store<unknown>,
  project: string,
  cuts: readonly NotionCut[],
): Promise<void> {
  return transact(store, ['projects', 'notions'], async (transaction) => {
    const [projects, notions] = [transaction.objectStore('projects'), transaction.objectStore('notions')]
    for (const cut of cuts) {
      const owned = (await notions.get(cut.notion))?.value
      if (owned) await putInto(notions, withCutBack(owned, cut), store.now())
    }
    const from = (await projects.get(project))?.value
    if (from) await putInto(projects, withoutTaken(from, cuts.flatMap(takenIn)), store.now())
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
