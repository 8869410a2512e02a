import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { connect, open } from './pages'
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

it('runs many futures with progress, and can be stopped', async () => {
  const { page } = await open(browser, program.address, '/outlook')
  await page.getByText('1020 futures of each plan').or(page.getByText(/futures of each plan/)).first().waitFor()
  await page.getByRole('button', { name: 'Run 100 000 futures' }).click()
  await page.getByRole('button', { name: 'Stop' }).waitFor()
  await page.locator('progress').waitFor()
  await page.getByRole('button', { name: 'Stop' }).click()
  await page.getByText('Stopped; the figures are those of before.').waitFor()
  await page.close()
})

it('tells one future after another in words', async () => {
  const { page } = await open(browser, program.address, '/outlook')
  await page.getByText('Future 1', { exact: true }).waitFor()
  const told = page.locator('section', { hasText: 'One future, told' }).locator('ol li')
  await told.first().waitFor()
  const before = await told.allInnerTexts()
  await page.getByRole('button', { name: 'Next future' }).click()
  await page.getByText('Future 2', { exact: true }).waitFor()
  await expect.poll(async () => (await told.allInnerTexts()).join()).not.toBe(before.join())
  await page.close()
})

it('opens the sheet behind a date', async () => {
  const { page } = await open(browser, program.address, '/outlook')
  await page.locator('table', { hasText: 'What fails first' }).locator('a').first().click()
  await page.waitForURL(/sheets|records/)
  await page.close()
})
