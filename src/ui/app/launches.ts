import { navigate } from 'wouter-preact/use-hash-location'

/** How some browsers hand over the files that the app was opened with; not yet in TypeScript's own library. */
interface LaunchQueue {
  setConsumer(consumer: (launch: { readonly files?: readonly FileSystemFileHandle[] }) => void): void
}

/** Opens the files that the device opens with this app, now and while it runs; of several the first. */
export function followLaunches(): void {
  const { launchQueue } = window as { launchQueue?: LaunchQueue }
  launchQueue?.setConsumer(({ files }) => {
    const [file] = files ?? []
    if (file) void open(file)
  })
}

async function open(handle: FileSystemFileHandle): Promise<void> {
  const { receive } = await import('../state/received.ts')
  // What can no longer be read is told as a file that is none.
  const file = await handle.getFile().catch(() => new Blob())
  navigate(await receive(file))
}
