/** So many records are through their gate in a few milliseconds, on a slow phone too. */
const SLICE = 25

/**
 * What `work` gives of each item, in order, a slice at a time: between two slices the page may do what waits. Not within a
 * transaction, which would end meanwhile.
 */
export async function inSlices<T, R>(items: readonly T[], work: (item: T) => R): Promise<R[]> {
  const done: R[] = []
  for (let at = 0; at < items.length; at += SLICE) {
    for (const item of items.slice(at, at + SLICE)) done.push(work(item))
    // After the last slice too: what is done with so many is a task by itself.
    if (items.length > SLICE) await nextTask()
  }
  return done
}

/** A timer would wait for some milliseconds more each time. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      resolve()
    }
    port2.postMessage(null)
  })
}
