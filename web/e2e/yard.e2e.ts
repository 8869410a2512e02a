// Phones of the yard: over HTTPS at the laptop's address, one that pressed on past the warning and one that was told to trust the laptop.
import { createHash, X509Certificate } from 'node:crypto'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { connect as dial } from 'node:tls'
import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { accessible, connect, fits, phone } from './pages'
import { yard, type Program } from './program'

let program: Program & { yard: string }
let browser: Browser
beforeAll(async () => {
  program = await yard()
  browser = await connect()
})
afterAll(async () => {
  await browser?.close()
  await program?.stop()
})

async function scanned(): Promise<string> {
  return ((await (await fetch(`${program.address}/api/v1/pairing`)).json()) as { address: string }).address
}

async function total(kind: string): Promise<number> {
  return ((await (await fetch(`${program.address}/api/v1/records/${kind}`)).json()) as { total: number }).total
}

async function begin(page: Page): Promise<void> {
  await page.goto(await scanned())
  await page.getByLabel('Your name').fill('M')
  await page.getByRole('button', { name: 'Begin' }).click()
  await page.getByText('The laptop answers').waitFor()
}

async function leaks(page: Page, frame: string): Promise<void> {
  await page.getByRole('button', { name: 'Leak', exact: true }).click()
  await page.getByLabel('Frame', { exact: true }).fill(frame)
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('1 entry waits').waitFor()
}

it('lets nobody in without a good code, and nobody anywhere but to the dock sheets', async () => {
  const context = await browser.newContext({ viewport: phone, hasTouch: true, ignoreHTTPSErrors: true })
  const page = await context.newPage()
  for (const path of ['/dock', '/dock?code=guessed']) {
    expect((await page.goto(program.yard + path))!.status()).toBe(401)
    await page.getByText(/In dock, Phones/).waitFor()
  }
  for (const path of ['/', '/indock', '/money', '/api/v1/brief', '/api/v1/records/found', '/api/v1/pairing']) expect((await page.goto(program.yard + path))!.status(), path).toBe(403)
  await begin(page)
  expect(page.url()).toBe(`${program.yard}/dock`) // the code does not stay in the address
  for (const path of ['/', '/indock', '/api/v1/brief', '/api/v1/records/found', '/api/v1/files/' + '0'.repeat(64)]) expect((await page.goto(program.yard + path))!.status(), path).toBe(403)
  await context.close()
})

it('on a phone that pressed on past the warning, says that the page must stay open, and keeps the queue through the gap', async () => {
  const before = await total('leak')
  const context = await browser.newContext({ viewport: phone, hasTouch: true, ignoreHTTPSErrors: true })
  const page = await context.newPage()
  await begin(page)
  await page.getByText('leave it open in the dock').waitFor()
  await fits(page)
  await accessible(page)
  expect(await page.evaluate(() => navigator.serviceWorker.getRegistrations().then((all) => all.length))).toBe(0)
  const cert = await page.request.get(`${program.yard}/dock/trust.crt`)
  expect(new X509Certificate(await cert.body()).ca).toBe(true)
  await context.setOffline(true)
  await leaks(page, '31')
  await page.getByText('No network').waitFor()
  expect(await total('leak')).toBe(before)
  await page.goto('about:blank') // the page was closed after all
  await context.setOffline(false)
  await page.goto(`${program.yard}/dock`)
  await expect.poll(() => total('leak'), { timeout: 30_000 }).toBe(before + 1)
  await page.getByText('All handed over').first().waitFor()
  await context.close()
})

it('on a phone that trusts the laptop, opens without a network', async () => {
  const before = await total('leak')
  const { context, forget } = await trusting()
  const page = await context.newPage()
  await begin(page)
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await page.waitForFunction(() => caches.match('/dock').then(Boolean))
  expect(await page.getByText('leave it open in the dock').count()).toBe(0)
  await context.setOffline(true)
  await page.goto('about:blank')
  await page.goto(`${program.yard}/dock`)
  await leaks(page, '47')
  expect(await total('leak')).toBe(before)
  await page.getByText('1 entry waits').waitFor()
  await context.setOffline(false)
  await page.getByText('1 entry waits').click({ timeout: 2000 }).catch(() => undefined) // it may be handed over by itself before anybody asks
  await page.getByRole('button', { name: 'Hand over now' }).click({ timeout: 2000 }).catch(() => undefined)
  await page.getByText('All handed over').first().waitFor()
  expect(await total('leak')).toBe(before + 1)
  await forget()
})

it('turns a phone out: what it holds stays on it until it scans again', async () => {
  const context = await browser.newContext({ viewport: phone, hasTouch: true, ignoreHTTPSErrors: true })
  const page = await context.newPage()
  await begin(page)
  await fetch(`${program.address}/api/v1/pairing`, { method: 'DELETE' })
  const before = await total('leak')
  await leaks(page, '52')
  await page.getByText('scan its code again').waitFor()
  expect(await total('leak')).toBe(before)
  await page.goto(await scanned())
  await expect.poll(() => total('leak'), { timeout: 30_000 }).toBe(before + 1)
  await context.close()
})

/** A browser that holds the laptop's certificate for good, as a phone does that was told to trust it. */
async function trusting(): Promise<{ context: BrowserContext; forget: () => Promise<void> }> {
  const { hostname, port } = new URL(program.yard)
  const raw = await new Promise<Buffer>((found, failed) => {
    const socket = dial({ host: hostname, port: Number(port), rejectUnauthorized: false }, () => {
      found(socket.getPeerCertificate().raw)
      socket.end()
    })
    socket.on('error', failed)
  })
  const key = createHash('sha256').update(new X509Certificate(raw).publicKey.export({ type: 'spki', format: 'der' })).digest('base64')
  const folder = await mkdtemp(join(tmpdir(), 'oakum-phone-'))
  const context = await chromium.launchPersistentContext(folder, {
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', viewport: phone, hasTouch: true,
    args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync', `--ignore-certificate-errors-spki-list=${key}`],
  })
  return {
    context,
    forget: async () => {
      await context.close()
      await rm(folder, { recursive: true, force: true })
    },
  }
}
