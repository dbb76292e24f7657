/**
 * Asks the browser not to clear this store when the device runs short of room. Worth asking once there is
 * something to lose. False: the browser declines, or has no such promise to give; a backup matters more then.
 */
export async function askToPersist(): Promise<boolean> {
  const { storage } = navigator
  if (!storage?.persist) return false
  return (await storage.persisted()) || (await storage.persist())
}
