import { execFile } from 'node:child_process'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'

const run = promisify(execFile)

/** What a command prints in an environment without any Chromium. Rejects when it fails. */
async function printed(command: string, args: readonly string[], env: Record<string, string> = {}) {
  const { CI: _, VITEST: __, NODE_ENV: ___, ...here } = process.env
  const { stdout, stderr } = await run(command, args, { env: { ...here, CHROMIUM_PATH: 'none', ...env } })
  return stdout + stderr
}

describe('without a browser', () => {
  it('`npm test` goes on, and says what it leaves out', async () => {
    expect(await printed('npx', ['--no-install', 'tsx', 'tests/support/find-chromium.ts'])).toMatch(
      /browser tests \(tests\/browser\) are left out/,
    )
  })

  it('all other tests run, and the last line says what was left out', async () => {
    const said = await printed('npx', ['--no-install', 'vitest', 'run', 'field-path', 'browser/manifest'])
    expect(said).toMatch(/Tests .*\d+ passed/)
    expect(said).not.toMatch(/manifest\.test/)
    expect(said.trimEnd()).toMatch(/are left out\.$/)
  })

  it('is a failure on CI, where nobody reads along', async () => {
    const ci = printed('npx', ['--no-install', 'tsx', 'tests/support/find-chromium.ts'], { CI: 'true' })
    await expect(ci).rejects.toThrow(/left out/)
  })
})
