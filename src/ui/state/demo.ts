import { computed } from '@preact/signals'
import { isDemoId } from '../../core/records/demo.ts'
import { readDemo } from '../../readers/model/demo.ts'
import { putDemo } from '../../storage/demo/put-demo.ts'
import { removeDemo as removeStoredDemo } from '../../storage/demo/remove-demo.ts'
import { stashWords } from '../words/en/stash.ts'
import { clothRecords } from './cloth-state.ts'
import { storeTrouble, theStore } from './keeper.ts'
import { notions, notionsWritten } from './notions-state.ts'
import { projects, projectsWritten } from './projects-state.ts'
import { restoreRemoval } from './restore-removal.ts'
import { garments, stashWritten } from './stash-state.ts'
import { offerUndo } from './undo.ts'

/** Made-up things to try the app with, fetched when asked for. */
const GARMENTS = import.meta.glob<unknown>('../../../demo-data/garments/*.json', { import: 'default' })
const NOTIONS = import.meta.glob<unknown>('../../../demo-data/notions/*.json', { import: 'default' })
const MADE = import.meta.glob<unknown>('../../../demo-data/projects/*.json', { import: 'default' })

/** True if anything of the demo is among what is open. */
export const hasDemo = computed(() => {
  const { reservations, cuts, offcuts } = clothRecords.value
  const open = [garments.value, notions.value, projects.value, reservations, cuts, offcuts]
  return open.some((records) => records.some(({ id }) => isDemoId(id)))
})

/**
 * Puts the demo beside what is hers, all of it at once; what is there already stays as it is. Rejects when it cannot be
 * fetched or the device refuses.
 */
export async function loadDemo(): Promise<void> {
  const files = [fetched(GARMENTS), fetched(NOTIONS), fetched(MADE)] as const
  const [garmentFiles, notionFiles, [made]] = await Promise.all(files)
  const demo = readDemo({ garments: garmentFiles, notions: notionFiles, made })
  if (!demo.ok) throw new Error(`the demo cannot be read: ${JSON.stringify(demo.faults.slice(0, 3))}`)
  await written()
  await putDemo(await theStore(), demo.value)
}

/**
 * Takes the demo away, with what she reserved or cut on its garments, and offers to take that back. All else that is hers
 * stays. What the device refuses stands in `storeTrouble`.
 */
export async function removeDemo(): Promise<void> {
  try {
    await written()
    const removal = await removeStoredDemo(await theStore())
    offerUndo(stashWords.demoRemoved, () => void restoreRemoval(removal))
  } catch (error) {
    storeTrouble.value = error
  }
}

function fetched(files: typeof GARMENTS): Promise<readonly unknown[]> {
  return Promise.all(Object.values(files).map((load) => load()))
}

/** What screens have changed before is stored first, or it would be written over what follows. */
async function written(): Promise<void> {
  await Promise.all([stashWritten(), notionsWritten(), projectsWritten()])
}
