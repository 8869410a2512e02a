// The twelve days in dock, looked at one after the other, and the page as a whole.
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser } from 'playwright-core'
import { accessible, connect, desk, fits, open, phone } from './pages'
import { docked, type Program } from './program'

let program: Program
let browser: Browser
beforeAll(async () => {
  program = await docked()
  browser = await connect()
})
afterAll(async () => {
  await browser?.close()
  await program?.stop()
})

it('can be watched on any evening: on the fifth, what lies behind the doublers has called more than is free', async () => {
  const fifth = await docked(5)
  try {
    const { page, complaints } = await open(browser, fifth.address, '/indock', phone)
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('Day 5 of 14')
    await page.getByText('4 things were found: 3 worse than expected, 1 better').waitFor()
    await page.getByText('-32 830 EUR').first().waitFor()
    expect(await page.getByText('spot repair forward').count()).toBe(0) // nobody knows of it yet
    expect(complaints).toEqual([])
    await page.close()
  } finally {
    await fifth.stop()
  }
})

it('shows today first, then seven days and the whole stay, on a phone and on a desk', async () => {
  const { page, complaints } = await open(browser, program.address, '/indock', phone)
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('Day 12 of 18')
  await page.getByRole('heading', { name: 'Triggers lit, waiting for an answer' }).waitFor()
  expect(await page.getByRole('region', { name: 'Blocks as she stands on them' }).count()).toBe(0)
  for (const span of ['Today', 'Seven days', 'The whole stay']) {
    await page.getByRole('button', { name: span }).click()
    for (const viewport of [phone, desk]) {
      await page.setViewportSize(viewport)
      await fits(page)
      await accessible(page)
    }
  }
  await page.getByRole('region', { name: 'Blocks as she stands on them' }).waitFor()
  const pictures = page.locator('figure img')
  expect(await pictures.count()).toBeGreaterThan(4)
  await pictures.first().scrollIntoViewIfNeeded()
  await expect.poll(() => pictures.first().evaluate((i: HTMLImageElement) => i.naturalWidth), { timeout: 20_000 }).toBeGreaterThan(100)
  expect(complaints).toEqual([])
  await page.getByRole('button', { name: 'Show the code' }).click()
  await page.getByRole('alert').filter({ hasText: 'oakum serve --yard' }).waitFor()
  await page.close()
})
