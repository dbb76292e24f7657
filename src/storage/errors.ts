/** What the device can refuse. The screen has one sentence for each class; any other error is a fault in the program. */
export class StorageError extends Error {
  override name = 'StorageError'
}

/** No room left: nothing of the write was kept, and what was stored before is untouched. */
export class StorageFull extends StorageError {
  override name = 'StorageFull'
}

/** What is stored was written by a newer version of the app than this one; it is left as it is. */
export class StorageNewer extends StorageError {
  override name = 'StorageNewer'
}

/** A tab with an older version of the app holds on to the store, so that it cannot be brought up to date. */
export class StorageHeld extends StorageError {
  override name = 'StorageHeld'
}

/** The connection is gone: another tab has updated the app, or the browser has ended it. Opening again may help. */
export class StorageLost extends StorageError {
  override name = 'StorageLost'
}

/** The browser gives this page no storage, as some private windows do. */
export class StorageUnavailable extends StorageError {
  override name = 'StorageUnavailable'
}

const BY_DOM_NAME: Readonly<Record<string, typeof StorageError>> = {
  QuotaExceededError: StorageFull,
  VersionError: StorageNewer,
  InvalidStateError: StorageLost,
  SecurityError: StorageUnavailable,
}

/** The storage error that a DOM error stands for, with the DOM error as its cause; any other error as it is. */
function asStorageError(error: unknown): unknown {
  if (!(error instanceof DOMException)) return error
  const Kind = BY_DOM_NAME[error.name]
  return Kind ? new Kind(error.message, { cause: error }) : error
}

/** The promise's value; a DOM error it rejects with becomes the storage error that it stands for. */
export async function orStorageError<T>(work: Promise<T>): Promise<T> {
  try {
    return await work
  } catch (error) {
    throw asStorageError(error)
  }
}
