import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser, Page } from 'playwright-core'
import { connect, desk, open, phone } from './pages'
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

const drawing = (page: Page) => page.getByRole('application')
const seen = async (page: Page) => (await drawing(page).locator('svg').getAttribute('viewBox'))!.split(' ').map(Number)

it('goes closer, moves and comes back by keyboard', async () => {
  const { page } = await open(browser, program.address, '/ship')
  const [, , whole] = await seen(page)
  await drawing(page).focus()
  for (const key of ['+', '+', '+']) await page.keyboard.press(key)
  const [x, , closer] = await seen(page)
  expect(closer!).toBeLessThan(whole! / 2)
  await page.keyboard.press('ArrowRight')
  expect((await seen(page))[0]!).toBeGreaterThan(x!)
  await page.keyboard.press('0')
  expect((await seen(page))[2]!).toBeCloseTo(whole!)
  await page.close()
})

it('goes closer under the wheel once it was taken up, and leaves the page its wheel before', async () => {
  const { page } = await open(browser, program.address, '/ship', { width: 1600, height: 500 })
  const [, , whole] = await seen(page)
  await drawing(page).hover()
  await page.mouse.wheel(0, -200)
  expect((await seen(page))[2]!).toBeCloseTo(whole!)
  await drawing(page).focus()
  await page.mouse.wheel(0, -200)
  await expect.poll(async () => (await seen(page))[2]!).toBeLessThan(whole!)
  await page.close()
})

it('keeps the list and the drawing on the same mark', async () => {
  const { page } = await open(browser, program.address, '/ship')
  const first = page.getByRole('listitem').getByRole('button').first()
  await first.click()
  expect(await first.getAttribute('aria-pressed')).toBe('true')
  expect(await page.locator('g.mark.chosen').count()).toBeGreaterThan(0)
  await page.locator('g.mark:not(.chosen) circle').last().dispatchEvent('click')
  expect(await first.getAttribute('aria-pressed')).toBe('false')
  expect(await page.locator('ol button[aria-pressed=true]').count()).toBe(1)
  await page.close()
})

it.each([['on a desk', desk], ['on a phone', phone]])('shows each view %s', async (_, viewport) => {
  const { page } = await open(browser, program.address, '/ship', viewport)
  for (const view of ['Profile', 'Plan', 'Sections', 'Shell expansion']) {
    await page.getByRole('button', { name: view, exact: true }).click()
    await expect.poll(() => drawing(page).getAttribute('aria-label')).toContain(view)
    expect(await drawing(page).locator('path').count()).toBeGreaterThan(2)
  }
  await page.close()
})

it('is pinched closer by two fingers', async () => {
  const { page } = await open(browser, program.address, '/ship', phone)
  const [, , whole] = await seen(page)
  await drawing(page).evaluate((frame) => {
    const send = (type: string, pointerId: number, x: number) => {
      const { left, top } = frame.getBoundingClientRect()
      frame.dispatchEvent(new PointerEvent(type, { pointerId, pointerType: 'touch', clientX: left + x, clientY: top + 80, bubbles: true }))
    }
    send('pointerdown', 1, 140)
    send('pointerdown', 2, 180)
    send('pointermove', 2, 260)
    send('pointerup', 1, 140)
    send('pointerup', 2, 260)
  })
  await expect.poll(async () => (await seen(page))[2]!).toBeLessThan(whole! / 2)
  await page.close()
})
