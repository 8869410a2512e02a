import { resolve } from 'node:path'
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

const survey = (name: string) => resolve(import.meta.dirname, '../../demo/surveys', name)

it('reads a messy survey, asks what it leaves open, lands it and says what did not land', async () => {
  const { page, complaints } = await open(browser, program.address, '/intake')
  await page.getByLabel('Choose a file').setInputFiles(survey('2023-ultrasonic.xlsx'))
  await page.getByRole('button', { name: 'Read it', exact: true }).click()
  await page.getByRole('heading', { name: 'What the file leaves open' }).waitFor()
  const land = page.getByRole('button', { name: 'Let it land' })
  expect(await land.isDisabled()).toBe(true)
  await accessible(page)

  await page.getByRole('radio', { name: /frame 1 is the ship's 151/ }).check()
  await page.getByRole('button', { name: 'Read it again like this' }).click()
  await expect.poll(() => land.isEnabled()).toBe(true)
  expect(await page.getByLabel('Read as: Gauged / S').inputValue()).toBe('thickness_starboard')

  await land.click()
  const said = page.getByRole('status').filter({ hasText: 'landed as' })
  await said.waitFor()
  expect(await said.textContent()).toMatch(/landed as \d+ records, 0 did not land/)
  await accessible(page)
  expect(complaints).toEqual([])
  await page.close()
})

it('notices the same file, proposes the layout again, and fits a phone', async () => {
  const { page } = await open(browser, program.address, '/intake', phone)
  await page.getByLabel('Choose a file').setInputFiles(survey('2023-ultrasonic.xlsx'))
  await page.getByRole('button', { name: 'Read it', exact: true }).click()
  await page.getByText(/^this very file was brought in/).waitFor()
  await page.getByText(/Read by the layout/).first().waitFor()
  expect(await page.getByRole('button', { name: 'Let it land' }).isDisabled()).toBe(true)
  await fits(page)
  await page.close()
})

it('says in words why a file can not be read', async () => {
  const { page } = await open(browser, program.address, '/intake')
  await page.getByLabel('Choose a file').setInputFiles({ name: 'old.xls', mimeType: 'application/vnd.ms-excel', buffer: Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0]) })
  await page.getByRole('button', { name: 'Read it', exact: true }).click()
  await page.getByRole('alert').filter({ hasText: 'save it as .xlsx or CSV' }).waitFor()
  await page.close()
})
