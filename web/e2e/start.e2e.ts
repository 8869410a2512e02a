import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { accessible, connect, fits, open, phone } from './pages'
import { blank, type Program } from './program'

let program: Program
let browser: Browser
beforeAll(async () => {
  program = await blank()
  browser = await connect()
})
afterAll(async () => {
  await browser?.close()
  await program?.stop()
})

it('leads in where nothing is known of her, to the first entry and on', async () => {
  const { page, complaints } = await open(browser, program.address, '/', phone)
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('A new ship')
  await fits(page)
  await accessible(page)
  await page.getByRole('link', { name: 'Enter it' }).first().click()
  await page.waitForURL('**/records/particulars/new')
  await page.getByLabel(/^Name/).fill('ST Pell')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
  await expect.poll(() => page.locator('header').textContent()).toContain('ST Pell')
  expect(complaints).toEqual([])
  await page.close()
})

it('gives an empty table to fill in elsewhere', async () => {
  const { page } = await open(browser, program.address, '/start')
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: /Empty table: thickness/ }).click()])
  expect(file.suggestedFilename()).toBe('thickness.xlsx')
  await page.close()
})

it('still answers every page', async () => {
  for (const path of ['/ship', '/standing', '/outlook', '/choices', '/money', '/docking', '/indock', '/record', '/sheets']) {
    const { page, complaints } = await open(browser, program.address, path)
    expect(complaints, path).toEqual([])
    await page.close()
  }
})
