import { defineConfig } from 'vitest/config'
import { findChromium } from './src/terminal/bench/chromium.ts'

/** Only to end a test that hangs: speed is measured in the benchmark, and a busy machine is slow, not wrong. */
const PATIENCE_MS = 180_000

const node = {
  test: {
    name: 'node',
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/browser/**'],
    globalSetup: 'tests/support/left-out.ts',
    testTimeout: PATIENCE_MS,
  },
}

/** Plain Node tests that drive a real Chromium against the built app. */
const browser = {
  test: {
    name: 'browser',
    include: ['tests/browser/**/*.test.ts'],
    globalSetup: 'tests/support/serve-app.ts',
    testTimeout: PATIENCE_MS,
    hookTimeout: PATIENCE_MS,
    expect: { poll: { timeout: PATIENCE_MS / 2, interval: 50 } },
    // After the node tests, one file at a time: a browser needs both cores for itself.
    sequence: { groupOrder: 1 },
    fileParallelism: false,
  },
}

export default defineConfig({ test: { projects: findChromium() === null ? [node] : [node, browser] } })
