import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser, Page } from 'playwright-core'
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

const asked = 'Will she ever steam again?'

async function askQuestion(page: Page, question: string): Promise<void> {
  await page.getByLabel(/^Question/).fill(question)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
}

it('writes a record down, corrects it, keeps both versions, and undoes', async () => {
  const { page, complaints } = await open(browser, program.address, '/records/question/new')
  await askQuestion(page, asked)
  await page.getByRole('link', { name: asked }).click()
  await page.getByLabel('Answer', { exact: true }).fill('Not under her own boilers.')
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
  await page.getByRole('link', { name: asked }).click()
  await page.getByText(/^Version 2,/).first().waitFor()
  await accessible(page)
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByRole('status').filter({ hasText: 'Undone.' }).waitFor()
  await expect.poll(() => page.getByLabel('Answer', { exact: true }).inputValue()).toBe('')
  expect(complaints).toEqual([])
  await page.close()
})

it('shows both versions where two people changed one record, and loses neither', async () => {
  const first = await open(browser, program.address, '/records/question/new')
  await askQuestion(first.page, 'Where do the propellers go?')
  await first.page.getByRole('link', { name: 'Where do the propellers go?' }).click()
  await first.page.getByLabel('Answer', { exact: true }).waitFor()
  const second = await open(browser, program.address, new URL(first.page.url()).pathname)

  await first.page.getByLabel('Answer', { exact: true }).fill('Ashore, beside her.')
  await first.page.getByRole('button', { name: 'Save', exact: true }).click()
  await first.page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()

  await second.page.getByLabel('Answer', { exact: true }).fill('To the museum.')
  await second.page.getByRole('button', { name: 'Save', exact: true }).click()
  const dialog = second.page.getByRole('dialog')
  await dialog.waitFor()
  expect(await dialog.textContent()).toContain('Ashore, beside her.')
  expect(await dialog.textContent()).toContain('To the museum.')
  await accessible(second.page)
  await dialog.getByRole('button', { name: 'Keep all of yours' }).click()
  await dialog.getByRole('button', { name: 'Save this choice' }).click()
  await second.page.getByRole('status').filter({ hasText: 'Saved.' }).waitFor()
  await second.page.getByRole('link', { name: 'Where do the propellers go?' }).click()
  await expect.poll(() => second.page.getByLabel('Answer', { exact: true }).inputValue()).toBe('To the museum.')
  await first.page.close()
  await second.page.close()
})
