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

it('edits a draft, publishes it, and hands out the pages', async () => {
  const { page, complaints } = await open(browser, program.address, '/record')
  await page.getByRole('heading', { name: 'Waiting for an answer' }).waitFor()
  expect(await page.textContent('main')).toContain('The forecastle bell')
  await page.getByText('The public, of the week').click()
  await page.getByRole('button', { name: 'Edit this draft: The public, of the week' }).click()
  await page.getByLabel('Title').fill('A quiet week <b>indeed</b>')
  const text = await page.getByLabel('Text', { exact: true }).inputValue()
  expect(text).toContain('In hand: ')
  expect(text).toContain('Needed next:')
  await page.getByLabel('Text', { exact: true }).fill(`${text}\n\n<script>alert(1)</script>`)
  await page.getByRole('button', { name: 'See it as they will' }).click()
  await page.locator('.seen').getByText('<script>alert(1)</script>').waitFor()
  await accessible(page)
  await page.getByRole('button', { name: 'Publish for: The public' }).click()
  await page.getByRole('status').filter({ hasText: 'Published.' }).waitFor()
  await page.getByRole('row', { name: 'A quiet week' }).getByText('everyone').waitFor()
  const zip = await (await fetch(`${program.address}/api/v1/news?for=public`)).arrayBuffer()
  expect(Buffer.from(zip).subarray(0, 2).toString()).toBe('PK')
  expect(Buffer.from(zip).toString('latin1')).toContain('feed.xml')
  expect(complaints).toEqual([])
  await page.close()
})

it('corrects what was published, and keeps what it said before', async () => {
  const { page, complaints } = await open(browser, program.address, '/record')
  await page.getByRole('button', { name: 'Edit Why she must be docked' }).click()
  await page.getByLabel('What is corrected, and why').fill('it is thirty years and a month')
  await page.getByLabel('Text', { exact: true }).fill('She has been afloat for thirty years and a month.')
  await page.getByRole('button', { name: 'Publish the correction' }).click()
  await page.getByRole('status').filter({ hasText: 'Published.' }).waitFor()
  const kept = (await (await fetch(`${program.address}/api/v1/records/update/update-1/history`)).json()) as { body: { text: string; photos: string[] } }[]
  expect(kept.map((v) => v.body.text.slice(0, 38))).toEqual(expect.arrayContaining(['She has been afloat for thirty years a', 'She has been afloat for thirty years s']))
  expect(kept.every((v) => v.body.photos[0] === 'photo-1')).toBe(true)
  expect(complaints).toEqual([])
  await page.close()
})

it('puts two questions together and answers them once', async () => {
  const { page, complaints } = await open(browser, program.address, '/record')
  const questions = page.locator('#questions')
  await questions.getByRole('button', { name: 'Yes, it asks the same: Could she steam again one day?, Will she steam again?' }).click()
  await page.getByRole('status').filter({ hasText: 'Put together' }).waitFor()
  const group = questions.locator('li').filter({ has: page.getByRole('heading', { name: 'Will she steam again?' }) })
  await group.getByText('asked 3 times').waitFor()
  await group.getByText('Answer it').click()
  await group.getByLabel('Answer, in plain words').fill('Not on these boilers.')
  await group.getByRole('button', { name: 'Keep the answer' }).click()
  await page.getByRole('status').filter({ hasText: 'Answered.' }).waitFor()
  await group.getByText('Not on these boilers.').waitFor()
  const draft = page.locator('#tell details').filter({ hasText: 'The public, of the day' })
  expect(await draft.textContent()).toContain('Will she steam again? (asked 3 times)')
  expect(complaints).toEqual([])
  await page.close()
})

it('opens a part by the keyboard: description, who held it, how to put it back; and fits a phone', async () => {
  const { page, complaints } = await open(browser, program.address, '/record', phone)
  await page.getByRole('heading', { name: 'Parts off the ship' }).click()
  await page.getByText('Spare blade of 1931: description').focus()
  await page.keyboard.press('Enter')
  const part = page.locator('#parts details[open]')
  for (const said of ['Object ID', 'bent at the tip', 'loan of ten years', 'with notice', 'hung on the after hold bulkhead', 'two straps, store 4']) await part.getByText(said).first().waitFor()
  await page.waitForFunction(() => [...document.querySelectorAll<HTMLImageElement>('#parts details[open] img')].every((i) => i.naturalWidth > 0))
  await fits(page)
  await accessible(page)
  expect(complaints).toEqual([])
  await page.close()
})

it('hands out the papers and the form of bid', async () => {
  const { page, complaints } = await open(browser, program.address, '/record')
  const papers = page.locator('#papers')
  for (const name of ['Board paper', 'Work specification', 'Form of bid (workbook)', 'Handed to the next docking', 'Labels for parts taken off']) {
    const href = await papers.getByRole('link', { name }).getAttribute('href')
    const answer = await fetch(program.address + href)
    expect(answer.status, name).toBe(200)
    const head = Buffer.from(await answer.arrayBuffer()).subarray(0, 4).toString('latin1')
    expect(head, name).toBe(name.startsWith('Form') ? 'PK\x03\x04' : '%PDF')
  }
  expect(complaints).toEqual([])
  await page.close()
})

it('signs a sheet, and shows the signature under it', async () => {
  const brief = (await (await fetch(`${program.address}/api/v1/brief`)).json()) as { sheets: string[] }
  const sheet = brief.sheets.find((id) => id.startsWith('gland.rings@gland-gland-port'))
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
