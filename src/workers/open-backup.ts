import type { BackupReading } from '../readers/backup/read-backup.ts'

/** Worker to page: what the file's gate makes of it, or why it could not be read at all. */
export type BackupReply =
  | { readonly type: 'read'; readonly reading: BackupReading }
  /** The device did not give the file's bytes. */
  | { readonly type: 'no-bytes' }

/** The part of a Worker that reading uses. */
export type ReadingWorker = Pick<
  Worker,
  'postMessage' | 'terminate' | 'onmessage' | 'onerror' | 'onmessageerror'
>

/**
 * Has a worker of its own read the backup, so that no file, however it was made, holds up the page. Rejects with the
 * signal's reason as soon as it aborts, which ends the worker, and with an Error when the worker fails: a file that
 * takes more memory than there is.
 */
export function openBackup(
  file: Blob,
  signal: AbortSignal,
  spawn: () => ReadingWorker = spawnReader,
): Promise<BackupReply> {
  return new Promise<BackupReply>((resolve, reject) => {
    if (signal.aborted) return reject(signal.reason)
    const worker = spawn()
    const end = () => {
      worker.terminate()
      signal.removeEventListener('abort', onAbort)
    }
    const fail = (reason: unknown) => {
      end()
      reject(reason)
    }
    const onAbort = () => fail(signal.reason)
    signal.addEventListener('abort', onAbort)
    worker.onmessage = ({ data }: MessageEvent<BackupReply>) => {
      end()
      resolve(data)
    }
    worker.onerror = (event) => fail(new Error(event.message || 'the reader of backups could not start'))
    worker.onmessageerror = () => fail(new Error('what was read cannot be handed over'))
    worker.postMessage(file)
  })
}

function spawnReader(): ReadingWorker {
  return new Worker(new URL('./backup.worker.ts', import.meta.url), { type: 'module' })
}
