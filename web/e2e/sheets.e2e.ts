import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { accessible, connect, open, phone } from './pages'
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

it('finds a method by its words', async () => {
  const { page } = await open(browser, program.address, '/sheets')
  await page.getByRole('searchbox').fill('thickness rule')
  await page.getByRole('link', { name: 'Least thickness by a rule' }).click()
  await page.waitForURL('**/methods/plating.wastage')
  await page.close()
})

it('works a method by hand with feet and inches, and shows the whole sheet', async () => {
  const { page, complaints } = await open(browser, program.address, '/methods/plating.wastage', phone)
  await page.getByLabel(/^Original/).first().fill('1/2 in')
  await page.getByLabel(/^Rule/).selectOption('25-percent')
  await page.getByRole('button', { name: 'Work it out' }).click()
  const sheet = page.getByRole('article')
  await sheet.waitFor()
  for (const part of ['Result', 'Given', 'Sources']) expect(await sheet.getByRole('heading', { name: part, exact: true }).count()).toBe(1)
  await accessible(page)
  expect(complaints).toEqual([])
  await page.close()
})

it('says what is missing and leads to the field', async () => {
  const { page } = await open(browser, program.address, '/methods/plating.wastage')
  await page.getByRole('button', { name: 'Work it out' }).click()
  const summary = page.getByRole('alert').filter({ hasText: 'another look' })
  await summary.waitFor()
  expect(await summary.evaluate((el) => el === document.activeElement)).toBe(true)
  await summary.getByRole('link').first().click()
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-invalid'))).toBe('true')
  await accessible(page)
  await page.close()
})

it('shows a refusal of the program at the field that is at fault', async () => {
  const { page } = await open(browser, program.address, '/methods/plating.wastage')
  await page.getByLabel(/^Original/).first().fill('12 psi')
  await page.getByLabel(/^Rule/).selectOption('25-percent')
  await page.getByRole('button', { name: 'Work it out' }).click()
  await page.locator('[aria-invalid=true]').waitFor()
  expect(await page.locator('[aria-invalid=true]').inputValue()).toBe('12 psi')
  await page.close()
})
