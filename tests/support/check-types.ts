import { spawnSync } from 'node:child_process'

/** Each zone has its own tsconfig, so that the compiler holds the borders between them. */
const ZONES = [
  'src/core',
  'src/readers',
  'src/storage',
  'src/workers',
  'src/ui',
  'src/terminal',
  'service-worker',
  'tests',
]

const wrong = ZONES.filter((zone) => {
  const { status } = spawnSync('npx', ['--no-install', 'tsc', '-p', zone], { stdio: 'inherit' })
  console.log(`${status === 0 ? 'ok   ' : 'wrong'} ${zone}`)
  return status !== 0
})
process.exitCode = wrong.length === 0 ? 0 : 1
