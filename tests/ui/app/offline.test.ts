import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'

/** As much of a service worker as the page sees. */
class FakeServiceWorker extends EventTarget {
  state: ServiceWorkerState = 'installing'
  readonly heard: unknown[] = []
  /** What it answers when it is asked whether all is kept; null: never. */
  hasAll: boolean | null = null
  postMessage(message: unknown, [port]: readonly MessagePort[] = []): void {
    this.heard.push(message)
    if (this.hasAll !== null) port?.postMessage(this.hasAll)
  }
  become(state: ServiceWorkerState): void {
    this.state = state
    this.dispatchEvent(new Event('statechange'))
  }
}

class FakeRegistration extends EventTarget {
  installing: FakeServiceWorker | null = null
  waiting: FakeServiceWorker | null = null
  active: FakeServiceWorker | null = null
  update = vi.fn(async () => {})
}

class FakeContainer extends EventTarget {
  controller: FakeServiceWorker | null = null
  register = vi.fn(async () => registration)
}

let container: FakeContainer
let registration: FakeRegistration
let pageEvents: EventTarget
let page: EventTarget & { visibilityState: string }
const reload = vi.fn()

beforeEach(() => {
  container = new FakeContainer()
  registration = new FakeRegistration()
  page = Object.assign(new EventTarget(), { visibilityState: 'visible' })
  reload.mockClear()
  vi.stubGlobal('navigator', { serviceWorker: container })
  vi.stubGlobal('location', { reload })
  vi.stubGlobal('document', page)
  pageEvents = new EventTarget()
  vi.stubGlobal('addEventListener', pageEvents.addEventListener.bind(pageEvents))
  vi.stubEnv('DEV', false)
  vi.resetModules()
})

afterEach(() => {
  vi.unstubAllGlobals()
  vi.unstubAllEnvs()
})

/** Starts the app's side of it and counts how often an update was told. */
async function start() {
  const offline = await import('../../../src/ui/app/offline.ts')
  const { keptOffline, keptJustNow } = await import('../../../src/ui/state/kept-offline.ts')
  await offline.keepOffline()
  const told = vi.fn()
  offline.onUpdateReady(told)
  return { ...offline, told, keptOffline, keptJustNow }
}

/** A worker in charge from an earlier visit. */
function visitedBefore(): void {
  container.controller = new FakeServiceWorker()
}

function findUpdate(): FakeServiceWorker {
  const next = new FakeServiceWorker()
  registration.installing = next
  registration.dispatchEvent(new Event('updatefound'))
  next.become('installed')
  return next
}

const changeController = () => container.dispatchEvent(new Event('controllerchange'))

describe('the first visit', () => {
  it('offers no update and loads nothing anew', async () => {
    const { told } = await start()
    findUpdate()
    changeController()
    expect(told).not.toHaveBeenCalled()
    expect(reload).not.toHaveBeenCalled()
  })
})

describe('an update', () => {
  it('is told once it lies ready, and changes nothing by itself', async () => {
    visitedBefore()
    const { told } = await start()
    const next = findUpdate()
    expect(told).toHaveBeenCalledOnce()
    expect(next.heard).toEqual([])
    expect(reload).not.toHaveBeenCalled()
  })

  it('that waited from an earlier visit is told at once', async () => {
    visitedBefore()
    registration.waiting = new FakeServiceWorker()
    expect((await start()).told).toHaveBeenCalledOnce()
  })

  it('that was being fetched when the page opened is told too', async () => {
    visitedBefore()
    const next = new FakeServiceWorker()
    registration.installing = next
    const { told } = await start()
    expect(told).not.toHaveBeenCalled()
    next.become('installed')
    expect(told).toHaveBeenCalledOnce()
  })

  it('asked for takes over first, and then the page is loaded anew', async () => {
    visitedBefore()
    const { applyUpdate } = await start()
    const next = findUpdate()
    applyUpdate()
    expect(next.heard).toEqual(['update now'])
    expect(reload).not.toHaveBeenCalled()
    changeController()
    expect(reload).toHaveBeenCalledOnce()
  })

  it('that another tab asked for is told, and needs only a load anew', async () => {
    visitedBefore()
    const { told, applyUpdate } = await start()
    changeController()
    expect(told).toHaveBeenCalledOnce()
    expect(reload).not.toHaveBeenCalled()
    applyUpdate()
    expect(reload).toHaveBeenCalledOnce()
  })

  it('is looked for when the app comes back into view, and without network that goes unsaid', async () => {
    await start()
    registration.update.mockRejectedValue(new TypeError('no network'))
    page.visibilityState = 'hidden'
    page.dispatchEvent(new Event('visibilitychange'))
    expect(registration.update).not.toHaveBeenCalled()
    page.visibilityState = 'visible'
    page.dispatchEvent(new Event('visibilitychange'))
    expect(registration.update).toHaveBeenCalledOnce()
  })
})

describe('that everything is kept', () => {
  /** The very first worker, on its way. */
  function firstWorker(hasAll: boolean): FakeServiceWorker {
    const first = new FakeServiceWorker()
    first.hasAll = hasAll
    registration.installing = first
    return first
  }

  it('is known once the first worker is in charge and has looked', async () => {
    const first = firstWorker(true)
    const { keptOffline, keptJustNow } = await start()
    first.become('installed')
    expect(keptOffline.value).toBe(false)
    first.become('activated')
    await vi.waitFor(() => expect(keptOffline.value).toBe(true))
    expect(keptJustNow.value).toBe(true)
  })

  it('is not said when a file is missing', async () => {
    const first = firstWorker(false)
    const { keptOffline, keptJustNow } = await start()
    first.become('activated')
    await vi.waitFor(() => expect(first.heard).toEqual(['is all kept?']))
    await new Promise((resolve) => setTimeout(resolve, 0))
    expect(keptOffline.value).toBe(false)
    expect(keptJustNow.value).toBe(false)
  })

  it('is known, and no news, at a later visit', async () => {
    registration.active = new FakeServiceWorker()
    registration.active.hasAll = true
    const { keptOffline, keptJustNow } = await start()
    expect(keptOffline.value).toBe(null)
    await vi.waitFor(() => expect(keptOffline.value).toBe(true))
    expect(keptJustNow.value).toBe(false)
  })

  it('is tried again when the network broke off: once it is back, or the app comes into view', async () => {
    const first = firstWorker(true)
    await start()
    first.become('redundant')
    expect(container.register).toHaveBeenCalledTimes(1)
    pageEvents.dispatchEvent(new Event('online'))
    expect(container.register).toHaveBeenCalledTimes(2)
    expect(registration.update).not.toHaveBeenCalled()
    first.become('redundant')
    page.dispatchEvent(new Event('visibilitychange'))
    expect(container.register).toHaveBeenCalledTimes(3)
  })
})

describe('a browser that refuses', () => {
  it('leaves the app as it is', async () => {
    container.register.mockRejectedValue(new DOMException('not here', 'SecurityError'))
    const warned = vi.spyOn(console, 'warn').mockImplementation(() => {})
    const { told } = await start()
    expect(warned).toHaveBeenCalledOnce()
    expect(told).not.toHaveBeenCalled()
    warned.mockRestore()
  })
})
