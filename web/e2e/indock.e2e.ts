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

interface InDock {
  heading: string[]
  lit: { trigger: string; direction: string; state: string }[]
  found: unknown[]
  log: unknown[]
}

it('plays twelve days: each shows what was known by then, and triggers call money and release it', async () => {
  const lit: string[][] = []
  for (let n = 1; n <= 12; n++) {
    const day = `2027-04-${String(7 + n).padStart(2, '0')}`
    const { indock } = (await (await fetch(`${program.address}/api/v1/brief?day=${day}`)).json()) as { indock: InDock }
    expect(indock.heading[0]).toContain(`Day ${n} of 18`)
    expect(indock.log.length).toBe(n)
    lit.push(indock.lit.map((l) => `${l.trigger} ${l.direction}`))
  }
  expect(lit[1]).toEqual([])
  expect(lit[2]).toEqual(['trigger-5 worse'])
  expect(lit[11]).toEqual(expect.arrayContaining(['trigger-4 better', 'trigger-1 worse', 'trigger-8 better']))
})

it('shows the day, the triggers, the changes and the code for phones, on a phone and on a desk', async () => {
  const { page, complaints } = await open(browser, program.address, '/indock', phone)
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('Day 12 of 18')
  await page.getByRole('heading', { name: 'Triggers lit' }).waitFor()
  for (const viewport of [phone, desk]) {
    await page.setViewportSize(viewport)
    await fits(page)
    await accessible(page)
  }
  expect(complaints).toEqual([])
  await page.getByRole('button', { name: 'Show the code' }).click()
  await page.getByRole('alert').filter({ hasText: 'oakum serve --yard' }).waitFor()
  await page.close()
})
