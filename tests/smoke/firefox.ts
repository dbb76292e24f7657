import { spawn } from 'node:child_process'
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises'
import { connect, type Socket } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { argumentsOf, ELEMENT, type Engine, type Found, until } from './engine.ts'

/** No calls home, and a free port for Marionette, which then writes it into the profile. */
const PREFERENCES = {
  'marionette.port': 0,
  'datareporting.policy.dataSubmissionEnabled': false,
  'app.normandy.enabled': false,
  'browser.shell.checkDefaultBrowser': false,
  'browser.startup.page': 0,
  'services.settings.server': 'data:,',
}

/** Firefox by its own Marionette, which speaks WebDriver's commands over a socket: Debian has no driver beside it. */
export async function startFirefox(): Promise<Engine> {
  const profile = await mkdtemp(join(tmpdir(), 'cutworth-firefox-'))
  const lines = Object.entries(PREFERENCES).map(
    ([name, value]) => `user_pref(${JSON.stringify(name)}, ${JSON.stringify(value)});`,
  )
  await writeFile(join(profile, 'user.js'), lines.join('\n'))
  const args = ['--headless', '--marionette', '--no-remote', '--profile', profile]
  const process = spawn('firefox-esr', args, { stdio: 'ignore' })
  const ended = new Promise<void>((resolve) => process.once('exit', () => resolve()))
  const port = await until('Firefox', () => readFile(join(profile, 'MarionetteActivePort'), 'utf8'))
  const marionette = await Marionette.at(Number(port))
  const { capabilities } = (await marionette.ask('WebDriver:NewSession', {})) as {
    capabilities: { browserName: string; browserVersion: string }
  }
  return {
    name: `${capabilities.browserName} ${capabilities.browserVersion}`,
    ...commands(marionette),
    async close() {
      await marionette.ask('Marionette:Quit', { flags: ['eForceQuit'] }).catch(() => {})
      marionette.end()
      process.kill()
      await ended
      await rm(profile, { recursive: true, force: true })
    },
  }
}

function commands(marionette: Marionette): Omit<Engine, 'name' | 'close'> {
  const value = async (name: string, asks: object) =>
    ((await marionette.ask(name, asks)) as { readonly value?: unknown }).value
  return {
    go: (url) => marionette.ask('WebDriver:Navigate', { url }).then(() => {}),
    find: async (xpath) =>
      ((await marionette.ask('WebDriver:FindElements', { using: 'xpath', value: xpath })) as Found[]).map(
        (found) => found[ELEMENT],
      ),
    click: (id) => marionette.ask('WebDriver:ElementClick', { id }).then(() => {}),
    type: (id, text) => marionette.ask('WebDriver:ElementSendKeys', { id, text }).then(() => {}),
    focused: async () => ((await value('WebDriver:GetActiveElement', {})) as Found)[ELEMENT],
    run: (script, element) => value('WebDriver:ExecuteScript', { script, args: argumentsOf(element) }),
    resize: (width, height) => marionette.ask('WebDriver:SetWindowRect', { width, height }).then(() => {}),
  }
}

type Waiting = { resolve(answer: unknown): void; reject(reason: Error): void }

/** Messages of Marionette's protocol 3: `length:[0, id, command, parameters]`, answered by `[1, id, error, result]`. */
class Marionette {
  readonly #socket: Socket
  readonly #waiting = new Map<number, Waiting>()
  #read = Buffer.alloc(0)
  #count = 0

  static at(port: number): Promise<Marionette> {
    return new Promise((resolve, reject) => {
      const socket = connect(port, '127.0.0.1')
      socket.once('error', reject)
      // It greets whoever comes.
      socket.once('data', () => resolve(new Marionette(socket)))
    })
  }

  private constructor(socket: Socket) {
    this.#socket = socket
    socket.on('data', (part) => this.#hear(part))
    socket.on('close', () => {
      for (const { reject } of this.#waiting.values()) reject(new Error('Firefox is gone'))
    })
  }

  ask(command: string, asks: object): Promise<unknown> {
    this.#count += 1
    const id = this.#count
    const text = JSON.stringify([0, id, command, asks])
    this.#socket.write(`${Buffer.byteLength(text)}:${text}`)
    return new Promise((resolve, reject) => this.#waiting.set(id, { resolve, reject }))
  }

  end(): void {
    this.#socket.destroy()
  }

  #hear(part: Buffer): void {
    this.#read = Buffer.concat([this.#read, part])
    for (;;) {
      const colon = this.#read.indexOf(':')
      const end = colon + 1 + Number(this.#read.subarray(0, Math.max(0, colon)))
      if (colon < 0 || this.#read.length < end) return
      const [, id, error, result] = JSON.parse(this.#read.subarray(colon + 1, end).toString())
      this.#read = this.#read.subarray(end)
      const waiting = this.#waiting.get(id)
      this.#waiting.delete(id)
      if (error) waiting?.reject(new Error(`${error.error}: ${error.message}`))
      else waiting?.resolve(result)
    }
  }
}
