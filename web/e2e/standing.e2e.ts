import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { accessible, connect, fits, open, phone } from './pages'
import { demo, type Program } from './program'

let program: Program
let browser: Browser
beforeAll(async () => {
  program = await demo()
  browser = await connect()
})
afterAll(async () => {
  await browser?.close()
  await program?.stop()
})

it('draws the shell with what nobody knows, and says it in words', async () => {
  const { page, complaints } = await open(browser, program.address, '/standing')
  const map = page.locator('#map svg[role=img]').first()
  await map.waitFor()
  expect(await map.locator('rect[fill="url(#fill-covered)"]').count()).toBeGreaterThan(3)
  expect(await map.locator('rect[fill="url(#fill-far)"]').count()).toBeGreaterThan(0)
  expect(await map.getAttribute('aria-label')).toContain('never looked at')
  await page.getByRole('button', { name: 'How well that is known' }).click()
  expect(await map.getAttribute('aria-label')).toContain('How well that is known')
  await accessible(page)
  expect(complaints).toEqual([])
  await page.close()
})

it('names ten places to measure next, with a field sheet to print', async () => {
  const { page } = await open(browser, program.address, '/standing')
  await page.locator('#next table').first().waitFor()
  expect(await page.locator('#next').getByRole('table', { name: 'Where to measure next' }).getByRole('row').count()).toBe(11)
  const sheet = await page.getByRole('link', { name: 'Print the field sheet' }).getAttribute('href')
  const answer = await page.request.get(program.address + sheet)
  expect(answer.headers()['content-type']).toContain('pdf')
  expect((await answer.body()).subarray(0, 4).toString()).toBe('%PDF')
  await page.close()
})

it('opens the sheet behind a bearing load', async () => {
  const { page } = await open(browser, program.address, '/standing')
  await page.locator('#shafts table a[href*="shaft.reactions"]').first().click()
  await page.waitForURL(/sheets\/shaft\.reactions/)
  await page.getByRole('heading', { name: 'Result', exact: true }).first().waitFor()
  await page.close()
})

it('brings up a part of the page by its name, on a phone', async () => {
  const { page } = await open(browser, program.address, '/standing', phone)
  await page.locator('#map svg[role=img]').first().waitFor()
  const fold = page.locator('#protection')
  expect(await fold.getAttribute('open')).toBeNull()
  expect(await page.locator('#plating summary').textContent()).toMatch(/\d+ in all: \d+ now.*never looked at/)
  await page.getByRole('button', { name: 'Protection against rust' }).click()
  await page.waitForFunction(() => document.activeElement?.textContent === 'Protection against rust')
  expect(await fold.getAttribute('open')).not.toBeNull()
  await fits(page)
  await accessible(page)
  await page.close()
})

it('prints whole what stands folded on a phone', async () => {
  const { page } = await open(browser, program.address, '/standing', phone)
  await page.locator('#map svg[role=img]').first().waitFor()
  expect(await page.locator('details#openings[open]').count()).toBe(0)
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')))
  await page.locator('#openings').getByText('03 bilge injection').waitFor()
  expect(await page.locator('details#openings[open], details#weight[open], details#plating[open]').count()).toBe(3)
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')))
  await page.waitForFunction(() => !document.querySelector('details#openings[open]'))
  await page.close()
})
