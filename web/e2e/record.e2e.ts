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

it('shows what waits, the parts ashore and the drafts, and keeps a draft as an update', async () => {
  const { page, complaints } = await open(browser, program.address, '/record')
  await page.getByRole('heading', { name: 'Waiting for an answer' }).waitFor()
  expect(await page.textContent('main')).toContain('The forecastle bell')
  await page.getByText('Draft for: The public').click()
  await page.getByRole('button', { name: 'Take it as an update to edit' }).first().click()
  await page.getByRole('status').filter({ hasText: 'Kept as a draft.' }).waitFor()
  await accessible(page)
  expect(complaints).toEqual([])
  await page.close()
})

it('signs a sheet, and shows the signature under it', async () => {
  const brief = (await (await fetch(`${program.address}/api/v1/brief`)).json()) as { sheets: string[] }
  const sheet = brief.sheets.find((id) => id.startsWith('gland.rings@'))
  expect(sheet).toBeDefined()
  const { page, complaints } = await open(browser, program.address, `/sheets/${encodeURIComponent(sheet ?? '')}`)
  await page.getByText('Nobody has signed this sheet yet.').waitFor()
  await page.getByText('Sign this sheet').click()
  await page.getByLabel('Reviewer').fill('N. Architect')
  await page.getByLabel('Licence or office').fill('invented 17')
  await page.getByRole('button', { name: 'Sign', exact: true }).click()
  await page.getByText('N. Architect, invented 17').waitFor()
  await page.getByText('stands', { exact: true }).waitFor()
  await accessible(page)
  expect(complaints).toEqual([])
  await page.close()
})
