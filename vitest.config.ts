import { defineConfig } from 'vitest/config'

export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'node',
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/browser/**'],
        },
      },
      {
        // Plain Node tests that drive a real Chromium against the built app.
        test: {
          name: 'browser',
          include: ['tests/browser/**/*.test.ts'],
          globalSetup: 'tests/support/serve-app.ts',
          testTimeout: 60_000,
          hookTimeout: 60_000,
          // After the node tests, one file at a time: a starved browser is slow, not wrong.
          sequence: { groupOrder: 1 },
          fileParallelism: false,
        },
      },
    ],
  },
})
