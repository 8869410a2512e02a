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
  const { page, complaints } = await open(browser, program.address, '/choices')
  const sides = page.getByRole('region', { name: 'Propellers and tail shafts: courses side by side' })
  await sides.getByRole('columnheader', { name: /Stay on, as they are/ }).waitFor()
  await sides.getByRole('rowheader', { name: 'curator' }).waitFor()
  await accessible(page)
  await sides.getByRole('row').filter({ has: page.getByRole('rowheader', { name: 'value', exact: true }) }).getByRole('link').first().click()
  await page.waitForURL(/sheets/)
  expect(complaints).toEqual([])
  await page.close()
})

it('fits a telephone', async () => {
  const { page } = await open(browser, program.address, '/choices', phone)
  await fits(page)
  await page.close()
})
