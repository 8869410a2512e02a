import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { accessible, connect, desk, fits, open, phone } from './pages'
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

const pages = [
  '/', '/ship', '/standing', '/outlook', '/choices', '/money', '/docking', '/calendar', '/indock', '/record', '/sheets', '/methods/plating.wastage', '/records',
  '/records/thickness', '/records/thickness/new', '/intake', '/journal', '/start',
]

it.each(pages)('%s is whole, quiet and open to everyone, on a phone and on a desk', async (path) => {
  const { page, complaints } = await open(browser, program.address, path, phone)
  for (const viewport of [phone, desk]) {
    await page.setViewportSize(viewport)
    await fits(page)
    await accessible(page)
  }
  expect(complaints).toEqual([])
  expect(await page.title()).toContain('Oakum')
  expect(await page.locator('[role=alert]').filter({ hasText: /\S/ }).count(), 'refusals shown').toBe(0)
  await page.close()
})

it('turns pages by their links, with the reading place at the start of the page', async () => {
  const { page } = await open(browser, program.address, '/')
  await page.getByRole('link', { name: 'Standing', exact: true }).click()
  await page.waitForURL('**/standing')
  await page.waitForFunction(() => document.activeElement?.id === 'main')
  expect(await page.getByRole('link', { name: 'Standing', exact: true }).getAttribute('aria-current')).toBe('page')
  await page.goBack()
  expect(new URL(page.url()).pathname).toBe('/')
  await page.close()
})

it('reaches every page with one thumb on a phone', async () => {
  const { page } = await open(browser, program.address, '/', phone)
  await page.getByRole('button', { name: 'All pages' }).click()
  const link = page.getByRole('link', { name: 'Money', exact: true })
  const box = await link.boundingBox()
  expect(box!.height).toBeGreaterThanOrEqual(44)
  await link.click()
  await page.waitForURL('**/money')
  expect(await page.getByRole('button', { name: 'All pages' }).getAttribute('aria-expanded')).toBe('false')
  await page.close()
})

it('lets the keyboard skip to the page', async () => {
  const { page } = await open(browser, program.address, '/standing')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Enter')
  expect(await page.evaluate(() => document.activeElement?.id)).toBe('main')
  await page.close()
})

it('says so where there is no such page', async () => {
  const { page } = await open(browser, program.address, '/engine-room')
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('There is no such page.')
  await page.close()
})

it('prints a page without its controls and with its title block', async () => {
  const { page } = await open(browser, program.address, '/standing')
  await page.emulateMedia({ media: 'print' })
  expect(await page.getByRole('navigation').isVisible()).toBe(false)
  expect(await page.locator('dl.paper').isVisible()).toBe(true)
  expect((await page.pdf({ format: 'A4' })).byteLength).toBeGreaterThan(1000)
  await page.close()
})
