// One switch for the units, kept in the browser: figures and sentences follow it, sheets and what people typed do not.
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { accessible, connect, desk, fits, phone } from './pages'
import { docked, type Program } from './program'

let program: Program
let browser: Browser
beforeAll(async () => {
  program = await docked()
  browser = await connect()
})
afterAll(async () => {
  await browser?.close()
  await program?.stop()
})

it('shows figures in US units, keeps the choice, and goes back', async () => {
  const context = await browser.newContext({ viewport: desk })
  const page = await context.newPage()
  await page.goto(`${program.address}/indock`)
  await page.getByRole('button', { name: 'The whole stay' }).click()
  const clearance = page.getByRole('row').filter({ hasText: 'F6' }).first()
  await clearance.getByText('6.9\u202fmm').waitFor()
  await page.getByLabel('Units').selectOption('us')
  await clearance.getByText(/^0\.27\d?\u202fin$/).waitFor() // 6.9 mm / 25.4
  await page.getByText(/F6: bearing, clearance 0\.27\d?\u202fin/).first().waitFor() // a sentence of ours too
  for (const viewport of [phone, desk]) {
    await page.setViewportSize(viewport)
    await fits(page)
    await accessible(page)
  }
  await page.reload()
  expect(await page.getByLabel('Units').inputValue()).toBe('us')
  await page.goto(`${program.address}/docking`)
  await page.getByText(/\d\u202fft\b/).first().waitFor()
  await page.getByLabel('Units').selectOption('as-entered')
  await page.getByText(/\d\u202fm\b/).first().waitFor()
  await context.close()
})
