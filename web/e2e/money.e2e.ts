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

it('moves with a pledge as soon as it is written down', async () => {
  const { page, complaints } = await open(browser, program.address, '/money')
  const pledges = page.getByRole('row', { name: /pledges not yet received, at their face/ })
  const before = await pledges.innerText()
  await page.getByText(/can be signed for: that is below the first rung/).waitFor()
  const ladder = page.locator('section').filter({ has: page.getByRole('heading', { name: 'What the next money buys' }) }).locator('ol')
  const rungs = await ladder.innerText()
  await page.goto(`${program.address}/records/pledge/new`, { waitUntil: 'networkidle' })
  await page.getByLabel(/^promised by/i).fill('the ropewalk society')
  await page.getByLabel(/^amount/i).first().fill('1 500 000')
  await page.getByLabel(/^due/i).first().fill('2027-03-01')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
  await page.goto(`${program.address}/money`, { waitUntil: 'networkidle' })
  await expect.poll(() => pledges.innerText()).not.toBe(before)
  await page.getByRole('rowheader', { name: /the ropewalk society/ }).first().waitFor()
  await page.getByText(/can be signed for: the ladder starts from there/).waitFor()
  expect(await ladder.innerText()).not.toBe(rungs)
  expect(complaints).toEqual([])
  await page.close()
})

it('shows the bids side by side and what the next money buys, for every reader', async () => {
  const { page } = await open(browser, program.address, '/money')
  const bids = page.getByRole('region', { name: 'Bids side by side' })
  await bids.getByRole('columnheader', { name: 'yard S at Skellby' }).waitFor()
  await bids.getByRole('rowheader', { name: 'on one footing' }).waitFor()
  await bids.getByRole('rowheader', { name: 'chance that it ends as the lowest' }).waitFor()
  await page.getByRole('heading', { name: 'Where two bids change places' }).waitFor()
  await page.getByRole('heading', { name: 'What the next money buys' }).waitFor()
  await accessible(page)
  await page.close()
})

it('shows the outside view beside the inside view, and what to save for the next docking', async () => {
  const { page, complaints } = await open(browser, program.address, '/money')
  const views = page.getByRole('region', { name: 'What happened to others' })
  expect(await views.getByRole('columnheader').allInnerTexts()).toEqual(['What', 'By our own lines', 'By the others'])
  await views.getByRole('row', { name: /enough eight times in ten/ }).getByRole('link').nth(1).click()
  await page.waitForURL(/sheets.*money\.reference/)
  await page.goBack()
  await page.getByText(/The docking after this one is due between \d{4} and \d{4}/).waitFor()
  expect(complaints).toEqual([])
  await page.close()
})

it('fits a telephone', async () => {
  const { page } = await open(browser, program.address, '/money', phone)
  await fits(page)
  await page.close()
})
