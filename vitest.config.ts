import { defineConfig } from 'vitest/config'

/** Only to end a test that hangs: speed is measured in the benchmark, and a busy machine is slow, not wrong. */
const PATIENCE_MS = 180_000

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
          testTimeout: PATIENCE_MS,
        },
      },
      {
        // Plain Node tests that drive a real Chromium against the built app.
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
      },
    ],
  },
})
