import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { accessible, connect, desk, fits, open, phone } from './pages'
import { demo, docked, type Program } from './program'

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

const path = '/calendar?day=2026-11-25'

it('finds the dates that satisfy all, from the first page', async () => {
  const { page, complaints } = await open(browser, program.address, '/?day=2026-11-25')
  await page.getByRole('link', { name: 'When can it be done?' }).click()
  await page.waitForURL('**/calendar?day=2026-11-25')
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('15 to 20 September 2027')
  const together = page.getByRole('img', { name: /^All together/ }).first()
  expect(await together.getAttribute('aria-label')).toContain('15 Sep 2027: satisfies all')
  const days = page.getByRole('region', { name: 'The days that satisfy all' })
  await days.getByRole('rowheader', { name: '15 Sep 2027', exact: true }).waitFor()
  expect(await days.getByRole('row').count()).toBe(7)
  await days.getByRole('link', { name: /EUR/ }).first().click()
  await page.getByRole('heading', { name: /dates on which she can go/ }).first().waitFor()
  expect(complaints).toEqual([])
  await page.close()
})

it('opens what a blocked date lacks, by keyboard', async () => {
  const { page } = await open(browser, program.address, path)
  const radios = page.getByRole('group', { name: 'The yard dates' }).getByRole('radio')
  expect(await radios.nth(1).isChecked()).toBe(true)
  await radios.nth(1).focus()
  await page.keyboard.press('ArrowUp')
  expect(await radios.nth(0).isChecked()).toBe(true)
  await page.getByRole('heading', { name: 'Skellby Old Graving Dock, April to May 2027, day by day' }).waitFor()
  await page.getByText(/It is held until 15 January 2027 and can be signed/).waitFor()
  await page.locator('#closer summary').focus()
  await page.keyboard.press('Enter')
  await page.getByRole('cell', { name: /tide to enter the dock 0\.\d+ m too low/ }).first().waitFor()
  await page.close()
})

it('tries the whole plan with the money counted today, and says how much is short', async () => {
  const { page } = await open(browser, program.address, path)
  await page.getByLabel('What is signed for, and with what money').selectOption({ label: 'The plan in force, with the money counted today' })
  await page.getByText(/EUR short as likely as not on 15 January 2027, when it must be signed/).first().waitFor()
  expect(await page.getByRole('region', { name: 'The days that satisfy all' }).count()).toBe(0)
  const table = page.locator('#strip summary')
  await table.focus()
  await page.keyboard.press('Enter')
  await page.getByRole('region', { name: 'All conditions, month by month' }).getByRole('rowheader', { name: 'Skellby Old Graving Dock free' }).first().waitFor()
  await page.close()
})

it('shows the works in their order, with the merge of paths beside the simple figure', async () => {
  const { page } = await open(browser, program.address, path)
  await page.getByRole('img', { name: /^Three coats: 19 Apr 2027 to 23 Apr 2027, can slip 0\.0/ }).waitFor()
  const chances = page.getByRole('region', { name: 'Chance of being done' })
  const row = chances.getByRole('row').nth(1)
  const figure = async (n: number) => Number.parseFloat((await row.getByRole('cell').nth(n).textContent())!)
  expect(await figure(1)).toBeGreaterThan(await figure(2))
  expect(await figure(2)).toBeGreaterThan(await figure(3))
  await row.getByRole('link').last().click()
  await page.getByRole('heading', { name: 'The works in their order' }).waitFor()
  await page.close()
})

it('is open to every reader, on a phone and on a desk, and prints', async () => {
  const { page, complaints } = await open(browser, program.address, path, phone)
  for (const viewport of [phone, desk]) {
    await page.setViewportSize(viewport)
    await fits(page)
    await accessible(page)
  }
  await page.emulateMedia({ media: 'print' })
  expect((await page.pdf({ format: 'A4', landscape: true })).byteLength).toBeGreaterThan(1000)
  expect(complaints).toEqual([])
  await page.close()
})

it('gives the dates to a calendar program', async () => {
  const { page } = await open(browser, program.address, path)
  const href = await page.getByRole('link', { name: 'Dates for a calendar program' }).getAttribute('href')
  const file = await (await fetch(program.address + href)).text()
  expect(file.replaceAll('\r\n ', '')).toContain('SUMMARY:Afloat heritage fund: match to be shown by')
  await page.close()
})

it('follows the works while she is in dock', async () => {
  const inDock = await docked()
  const { page } = await open(browser, inDock.address, '/calendar?day=2027-04-19')
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('She is in dock: day 12 of 18.')
  await page.getByRole('img', { name: /^Three coats: 17 Apr 2027/ }).waitFor()
  await fits(page)
  await page.close()
  await inDock.stop()
})

it('says which works to sign before the hull is seen', async () => {
  const { page, complaints } = await open(browser, program.address, '/money?day=2026-11-25')
  const part = page.locator('#contract')
  await page.route('**/money/contract/run?**', () => undefined) // a program that takes its time
  await part.getByRole('button', { name: 'Work it out' }).focus()
  await page.keyboard.press('Enter')
  await part.getByRole('progressbar').waitFor()
  await part.getByText(/Begun: futures of the hull/).waitFor()
  const asked = page.waitForEvent('requestfailed', (r) => r.url().includes('/money/contract/run'))
  await part.getByRole('button', { name: 'Stop', exact: true }).focus()
  await page.keyboard.press('Enter')
  await asked
  await part.getByText('Stopped; nothing is changed.').waitFor()
  expect(await part.getByText(/^Sign/).count()).toBe(1)
  await page.unroute('**/money/contract/run?**')
  await part.getByRole('button', { name: 'Work it out' }).click()
  await part.getByText(/^With .*: sign these \d+ works now for/).waitFor()
  await part.getByText('As she may be found', { exact: true }).first().click()
  await part.getByRole('columnheader', { name: 'Chance' }).waitFor()
  expect(complaints).toEqual([])
  await page.close()
})
