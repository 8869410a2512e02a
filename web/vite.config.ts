import { svelte } from '@sveltejs/vite-plugin-svelte'
import { defineConfig } from 'vitest/config'

// `npm run dev` shows the pages as they are written, with the data of a running program: OAKUM is the address it printed.
const program = process.env.OAKUM ?? 'http://127.0.0.1:8086'

export default defineConfig(({ mode }) => ({
  plugins: [svelte()],
  // Two pages: all of it, and the dock sheets alone, which must be small and open without a network.
  build: { target: 'es2022', assetsInlineLimit: 0, chunkSizeWarningLimit: 900, rolldownOptions: { input: ['index.html', 'dock.html'] } },
  // Without this, tests would mount the server's half of Svelte.
  resolve: mode === 'test' ? { conditions: ['browser'] } : {},
  server: { proxy: { '/api': program } },
  test: {
    environment: 'happy-dom',
    include: ['src/**/*.test.ts', 'test/**/*.test.ts'],
    setupFiles: ['test/setup.ts'],
    restoreMocks: true,
  },
}))
