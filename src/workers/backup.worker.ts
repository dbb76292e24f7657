import { readBackup, sizeFault } from '../readers/backup/read-backup.ts'
import type { BackupReply } from './open-backup.ts'

self.onmessage = async ({ data: file }: MessageEvent<Blob>) => {
  self.postMessage(await replyTo(file))
}

async function replyTo(file: Blob): Promise<BackupReply> {
  // A file of any size can be chosen, and its bytes would fill the memory.
  const message = sizeFault(file.size)
  if (message !== null)
    return { type: 'read', reading: { ok: false, faults: [{ field: 'document', message }] } }
  const bytes = await file.arrayBuffer().catch(() => null)
  return bytes ? { type: 'read', reading: readBackup(new Uint8Array(bytes)) } : { type: 'no-bytes' }
}
