import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { accessible, connect, open } from './pages'
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
  const plans = page.locator('section').filter({ has: page.getByRole('heading', { name: 'The plans on the same futures' }) })
  await plans.getByText(/futures of each plan/).first().waitFor()
  await plans.getByRole('button', { name: 'Run 100 000 futures' }).click()
  await plans.locator('progress').waitFor()
  await plans.getByRole('button', { name: 'Stop' }).click()
  await plans.getByText('Stopped; the figures are those of before.').waitFor()
  await page.close()
})

it('compares the plans that the keeper chooses, on the same futures', async () => {
  const { page, complaints } = await open(browser, program.address, '/outlook')
  const plans = page.locator('section').filter({ has: page.getByRole('heading', { name: 'The plans on the same futures' }) })
  await plans.getByRole('checkbox', { name: /wait until she must/ }).uncheck()
  await plans.getByRole('checkbox', { name: /dock when the money is there/ }).uncheck()
  await plans.getByText('Choose two to four.').waitFor()
  await plans.getByRole('checkbox', { name: /Autumn 2027 at Skellby/ }).check()
  await plans.getByRole('checkbox', { name: /Wait two years/ }).check()
  await plans.getByRole('button', { name: 'Compare on 16 384 futures' }).click()
  const table = page.getByRole('region', { name: 'The plans on the same futures' })
  await table.getByRole('columnheader', { name: 'Wait two years' }).waitFor({ timeout: 60_000 })
  expect(await table.getByRole('columnheader').allInnerTexts()).toHaveLength(4)
  await table.getByRole('row', { name: /emergency within ten years, against the first plan.*points.*standard error/ }).waitFor()
  await plans.getByText(/Against “dock in 2027”, “Autumn 2027 at Skellby, propellers stay”/).waitFor()
  // the stories are of the plans that are compared now
  await page.locator('section').filter({ has: page.getByRole('heading', { name: 'One future, told' }) }).locator('select').selectOption({ label: 'Wait two years' })
  expect(complaints).toEqual([])
  await page.close()
})

it('says what drives the answer, what to look at next and what waiting costs', async () => {
  const { page, complaints } = await open(browser, program.address, '/outlook')
  const study = page.locator('section').filter({ has: page.getByRole('heading', { name: 'What drives the answer' }) })
  await study.getByRole('region', { name: 'Share of the spread' }).getByRole('rowheader', { name: 'openings' }).waitFor({ timeout: 120_000 })
  await study.getByText(/the answer hangs most on/).waitFor()
  await study.getByRole('region', { name: 'What to look at next' }).getByRole('row', { name: /Two-layer gauging of the doublers.*14\s000\sEUR/ }).waitFor()
  await study.getByText(/Waiting 1 year/).waitFor()
  await accessible(page)
  expect(complaints).toEqual([])
  await page.close()
})

it('tells one future after another in words', async () => {
  const { page } = await open(browser, program.address, '/outlook')
  await page.getByText('Future 1', { exact: true }).waitFor()
  const told = page.locator('section').filter({ has: page.getByRole('heading', { name: 'One future, told' }) }).locator('ol li')
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
