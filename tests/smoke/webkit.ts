import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { argumentsOf, ELEMENT, type Engine, type Found, until } from './engine.ts'

/** WebKitGTK by its own driver, over W3C WebDriver, in the small browser that comes with it. */
export async function startWebKit(): Promise<Engine> {
  const screen = await startScreen()
  const port = await freePort()
  // It would else find the service worker of the last run, for it keeps what pages store in her home.
  const home = await mkdtemp(join(tmpdir(), 'cutworth-webkit-'))
  const folders = { HOME: home, XDG_DATA_HOME: home, XDG_CACHE_HOME: home, XDG_CONFIG_HOME: home }
  const env = { ...process.env, ...folders, ...(screen && { DISPLAY: screen.display }) }
  const driver = spawn('WebKitWebDriver', [`--port=${port}`], { stdio: 'ignore', env })
  const ask = asker(`http://127.0.0.1:${port}`)
  await until('WebKitWebDriver', () => ask('GET', '/status'))
  const browser = { 'webkitgtk:browserOptions': { binary: browserPath(), args: ['--automation'] } }
  const session = (await ask('POST', '/session', { capabilities: { alwaysMatch: browser } })) as {
    sessionId: string
    capabilities: { browserName: string; browserVersion: string }
  }
  const { browserName, browserVersion } = session.capabilities
  const here = `/session/${session.sessionId}`
  return {
    name: `WebKitGTK's ${browserName} ${browserVersion}`,
    ...commands((method, path, asks) => ask(method, here + path, asks)),
    async close() {
      await ask('DELETE', here).catch(() => {})
      for (const started of [driver, screen?.process]) await ended(started)
      await rm(home, { recursive: true, force: true })
    },
  }
}

type Ask = (method: 'GET' | 'POST' | 'DELETE', path: string, asks?: object) => Promise<unknown>

function commands(ask: Ask): Omit<Engine, 'name' | 'close'> {
  return {
    go: (url) => ask('POST', '/url', { url }).then(() => {}),
    find: async (xpath) =>
      ((await ask('POST', '/elements', { using: 'xpath', value: xpath })) as Found[]).map(
        (found) => found[ELEMENT],
      ),
    click: (id) => ask('POST', `/element/${id}/click`, {}).then(() => {}),
    type: (id, text) => ask('POST', `/element/${id}/value`, { text }).then(() => {}),
    focused: async () => ((await ask('GET', '/element/active')) as Found)[ELEMENT],
    run: (script, element) => ask('POST', '/execute/sync', { script, args: argumentsOf(element) }),
    resize: (width, height) => ask('POST', '/window/rect', { width, height }).then(() => {}),
  }
}

function asker(address: string): Ask {
  return async (method, path, asks) => {
    const body = asks && JSON.stringify(asks)
    const answer = await fetch(address + path, { method, ...(body && { body }) })
    const { value } = (await answer.json()) as { value: unknown }
    if (answer.ok) return value
    const { error, message } = value as { error: string; message: string }
    throw new Error(`${error}: ${message}`)
  }
}

/** In the folder of whichever machine it is: /usr/lib/x86_64-linux-gnu/… */
function browserPath(): string {
  const places = readdirSync('/usr/lib').map((folder) => `/usr/lib/${folder}/webkit2gtk-4.1/MiniBrowser`)
  const path = places.find((place) => existsSync(place))
  if (path === undefined) throw new Error('WebKitGTK’s MiniBrowser is not where Debian puts it')
  return path
}

interface Screen {
  readonly display: string
  readonly process: ChildProcess
}

/** A screen that nobody sees, where there is none; it writes the number that it got. */
async function startScreen(): Promise<Screen | null> {
  if (process.env.DISPLAY) return null
  const xvfb = spawn('Xvfb', ['-displayfd', '1', '-screen', '0', '800x1000x24', '-nolisten', 'tcp'], {
    stdio: ['ignore', 'pipe', 'ignore'],
  })
  let written = ''
  xvfb.stdout.on('data', (part) => {
    written += part
  })
  const display = await until('Xvfb', () => /^\d+/.exec(written)?.[0] ?? null)
  return { display: `:${display}`, process: xvfb }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer().once('error', reject)
    server.listen(0, '127.0.0.1', () => {
      const address = server.address()
      const port = typeof address === 'object' && address ? address.port : 0
      server.close(() => resolve(port))
    })
  })
}

async function ended(started: ChildProcess | undefined): Promise<void> {
  if (!started || started.exitCode !== null) return
  const exit = new Promise((resolve) => started.once('exit', resolve))
  started.kill()
  await exit
}
