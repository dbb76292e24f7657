import {
  StorageFull,
  StorageHeld,
  StorageLost,
  StorageNewer,
  StorageUnavailable,
} from '../../storage/errors.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { storeTrouble } from '../state/keeper.ts'
import { unwritten, writeAgain } from '../state/unwritten.ts'
import { words } from '../words/words.ts'
import { applyUpdate } from './offline.ts'

/** Why the device stores nothing now, and what she can do about it. */
export function StoreTrouble({ trouble }: { trouble: unknown }) {
  return (
    <Notice icon="care" actions={<WayOn trouble={trouble} />}>
      {textOf(trouble)}
    </Notice>
  )
}

function textOf(trouble: unknown): string {
  const { shell } = words
  if (trouble instanceof StorageFull) return shell.trouble.full
  if (trouble instanceof StorageNewer) return shell.trouble.newer
  if (trouble instanceof StorageHeld) return shell.trouble.held
  if (trouble instanceof StorageLost) return shell.trouble.lost
  if (trouble instanceof StorageUnavailable) return shell.trouble.none
  return shell.trouble.other
}

function WayOn({ trouble }: { trouble: unknown }) {
  const { shell } = words
  if (trouble instanceof StorageNewer || trouble instanceof StorageLost)
    return <Button onPress={applyUpdate}>{shell.loadAnew}</Button>
  if (unwritten.value === null) return null
  const again = () => {
    storeTrouble.value = null
    writeAgain()
  }
  return <Button onPress={again}>{shell.storeAgain}</Button>
}
