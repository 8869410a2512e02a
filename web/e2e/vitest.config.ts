import { defineConfig } from 'vitest/config'

// The real program in a real browser. One browser for the run, one program and one copy of the ship for each file of tests.
export default defineConfig({
  cacheDir: '../node_modules/.vite/e2e',
  test: {
    root: import.meta.dirname,
    include: ['*.e2e.ts'],
    globalSetup: ['browser.ts'],
    testTimeout: 90_000,
    hookTimeout: 180_000,
    maxWorkers: 2,
  },
})
