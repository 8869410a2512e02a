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

it('says the ownership gate before it compares anything', async () => {
  const { page } = await open(browser, program.address, '/choices')
  const headings = await page.locator('main h2').allInnerTexts()
  expect(headings[0]).toBe('First: what may not be given away yet')
  await page.close()
})

it('puts the courses of a matter side by side and opens the sheet behind a value', async () => {
  const { page, complaints } = await open(browser, program.address, '/choices#matter-propellers')
  const sides = page.getByRole('region', { name: 'Propellers and tail shafts: courses side by side' })
  await sides.getByRole('columnheader', { name: /Stay on, as they are/ }).waitFor()
  await sides.getByRole('rowheader', { name: 'curator' }).waitFor()
  await accessible(page)
  await sides.getByRole('row').filter({ has: page.getByRole('rowheader', { name: 'value', exact: true }) }).getByRole('link').first().click()
  await page.waitForURL(/sheets/)
  expect(complaints).toEqual([])
  await page.close()
})

it('lists the matters first and opens the one that is asked for', async () => {
  const { page, complaints } = await open(browser, program.address, '/choices', phone)
  expect(await page.evaluate(() => document.documentElement.scrollHeight), 'pixels to scroll').toBeLessThan(16_000)
  const list = page.getByRole('region', { name: 'The matters' })
  await list.getByRole('row', { name: /Coating scheme.*open/ }).getByRole('link').first().click()
  await page.getByRole('region', { name: 'Coating scheme: courses side by side' }).waitFor()
  await page.emulateMedia({ media: 'print' })
  await page.evaluate(() => dispatchEvent(new Event('beforeprint')))
  await expect.poll(() => page.locator('details:not([open]) h2').count()).toBe(0)
  expect(complaints).toEqual([])
  await page.close()
})

it('tries a changed trigger on the futures before it is saved, and keeps what is refused', async () => {
  const { page, complaints } = await open(browser, program.address, '/choices')
  await page.getByRole('button', { name: 'Change “Behind the doublers worse”' }).click()
  const form = page.getByRole('form', { name: 'Behind the doublers worse' })
  const says = form.getByText(/Would have been lit in .* of 2048 futures/)
  await says.waitFor()
  const before = await says.innerText()
  await form.getByLabel('is found with its').selectOption('count')
  await form.getByLabel('which side of the limit').selectOption('above')
  await form.getByLabel('limit', { exact: true }).fill('5')
  await form.getByLabel('unit of the limit').selectOption('-')
  await expect.poll(() => says.innerText(), { timeout: 20_000 }).not.toBe(before)
  expect(await says.innerText()).toMatch(/As it stands now: \d/)
  await accessible(page)

  await form.getByLabel('which calls up to').fill('a lot')
  await form.getByRole('alert').waitFor()
  await form.getByRole('button', { name: 'Save the trigger' }).click()
  await expect.poll(() => form.getByLabel('which calls up to').inputValue()).toBe('a lot')
  await form.getByLabel('which calls up to').fill('90 000')
  await form.getByRole('button', { name: 'Save the trigger' }).click()
  await page.getByRole('status').filter({ hasText: 'The trigger is saved.' }).waitFor()
  await page.getByText(/a doubler .* count above 5.*worth up to 90\s000/).waitFor()
  expect(complaints.filter((c) => !/422/.test(c))).toEqual([])
  await page.close()
})

it('agrees a decision with its reason and what was turned down', async () => {
  const { page, complaints } = await open(browser, program.address, '/choices#matter-glands')
  const matter = page.locator('#matter-glands')
  await matter.getByRole('button', { name: 'Agree a decision' }).click()
  await matter.getByLabel('Course taken').selectOption({ label: 'Covers welded over tube and shaft outside' })
  await matter.getByRole('button', { name: 'Write down the decision' }).click()
  await matter.getByRole('alert').filter({ hasText: 'write down the reason' }).waitFor()
  expect(await matter.getByLabel('Course taken').inputValue()).toBe('course-glands-cover')
  await matter.getByLabel('Why', { exact: true }).fill('nobody means to turn the shafts again')
  await matter.getByLabel('Who was against, and why').fill('volunteers: they want to see them turn')
  await accessible(page)
  await matter.getByRole('button', { name: 'Write down the decision' }).click()
  await page.getByRole('status').filter({ hasText: 'The decision is written down.' }).waitFor()
  await page.getByText(/Because: nobody means to turn the shafts again/).waitFor()
  await page.getByText(/Turned down: .*Repacked in dock, studs renewed/).waitFor()
  await page.getByRole('region', { name: 'The matters' }).getByRole('row', { name: /Stern glands.*settled.*Covers welded/ }).waitFor()
  expect(complaints.filter((c) => !/422/.test(c))).toEqual([])
  await page.close()
})

it('fits a telephone', async () => {
  const { page } = await open(browser, program.address, '/choices', phone)
  await fits(page)
  await page.close()
})
