// Debian's Chromium, started once; the tests reach it by the address it is given.
import { chromium } from 'playwright-core'
import type { TestProject } from 'vitest/node'

declare module 'vitest' {
  interface ProvidedContext {
    browser: string
  }
}

/** A machine without a network: nothing is looked up, nothing is sent; only this machine's own address is reached. */
const quiet = [
  '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync',
]

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const server = await chromium.launchServer({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: quiet })
  project.provide('browser', server.wsEndpoint())
  return () => server.close()
}
