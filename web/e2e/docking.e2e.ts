import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser, Locator, Page } from 'playwright-core'
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

it('says what is unsafe first, with what would change it', async () => {
  const { page } = await open(browser, program.address, '/docking')
  expect(await page.getByRole('heading', { level: 1 }).textContent()).toContain('UNSAFE')
  await page.getByText('fits on springs only', { exact: true }).waitFor()
  expect(await page.locator('header p').allTextContents()).toEqual(expect.arrayContaining([expect.stringContaining('ballast shifted')]))
  await page.close()
})

it('lets the water fall by its slider, by keyboard, down to dry', async () => {
  const { page } = await open(browser, program.address, '/docking')
  const slider = page.locator('[data-slider=level]')
  await slider.waitFor()
  const carried = async () => Number.parseFloat((await page.locator('[data-at=upthrust]').textContent())!)
  expect(await carried()).toBe(0)
  await slider.focus()
  for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowRight')
  const some = await carried()
  expect(some).toBeGreaterThan(0)
  await page.keyboard.press('End')
  expect(await carried()).toBeGreaterThan(3000)
  expect(await slider.getAttribute('aria-valuetext')).toContain('dry')
  await page.close()
})

it('works the landing again while her centre of gravity is dragged up, and says unsafe', async () => {
  const { page } = await open(browser, program.address, '/docking')
  const kg = page.getByLabel(/Centre of gravity above the baseline/)
  await kg.waitFor()
  await kg.focus()
  await page.keyboard.press('End')
  await page.locator('section[aria-labelledby=sequence]').getByText(/UNSAFE/).first().waitFor()
  await page.close()
})

it('leaves blocks out for a work area and loads their neighbours', async () => {
  const { page } = await open(browser, program.address, '/docking')
  const group = page.getByRole('group', { name: 'What the keel blocks carry' })
  const load = async (n: number) => Number(/: (\d+) kN/.exec((await group.getByRole('button').nth(n - 1).getAttribute('aria-label'))!)![1])
  await group.waitFor()
  const before = await load(21)
  await group.getByRole('button').nth(19).click()
  await expect.poll(() => group.getByRole('button').nth(19).getAttribute('aria-label')).toContain('left out')
  expect(await load(21)).toBeGreaterThan(before)
  expect(await page.locator('[data-left-out]').textContent()).toBe('1 left out')
  await page.getByRole('button', { name: 'Put all back' }).click()
  await expect.poll(() => load(21)).toBe(before)
  await page.close()
})

it('floods the shaft alley through a lost gland, and shows it at chosen times', async () => {
  const { page } = await open(browser, program.address, '/docking')
  await page.getByLabel('Made ready').selectOption({ label: 'Port stern gland with its packing gone, into shaft alley' })
  await page.getByRole('button', { name: 'Flood', exact: true }).click()
  await page.locator('[data-fate]').waitFor()
  await page.getByText(/the alarm in shaft alley is reached/).waitFor()
  await page.getByText(/over the sill of the alley door/).first().waitFor()
  const aft = async () => Number.parseFloat((await page.locator('[data-at=aft]').textContent())!)
  const end = await aft()
  await page.locator('[data-slider=time]').focus()
  await page.keyboard.press('Home')
  expect(await aft()).toBeLessThan(end - 0.5)
  await page.getByRole('button', { name: 'Work every space and every pair' }).click()
  await page.getByText('After hold and Engine room').waitFor()
  await accessible(page)
  await page.close()
})

it('follows the water from space to space, and holds it up behind a door that is shut', async () => {
  const { page } = await open(browser, program.address, '/docking')
  await page.getByLabel('Made ready').selectOption({ label: 'Port stern gland with its packing gone, into shaft alley' })
  const flood = page.getByRole('button', { name: 'Flood', exact: true })
  await flood.click()
  const next = page.locator('[data-next] li')
  await next.first().waitFor()
  expect(await next.allTextContents()).toEqual(expect.arrayContaining([expect.stringContaining('Engine room: after'), expect.stringContaining('Boiler room: after')]))
  const boiler = async () => Number(/after ([\d.]+) h/.exec((await next.nth(1).textContent()) ?? '')?.[1])
  const freely = await boiler()
  await page.getByLabel(/^Alley door/).uncheck()
  await flood.click()
  await expect.poll(boiler, { timeout: 20000 }).toBeGreaterThan(freely)
  await accessible(page)
  await page.close()
}, 60000)

it('works the docking with the ballast moved, and as she lies when asked', async () => {
  const { page } = await open(browser, program.address, '/docking')
  const section = page.locator('section[aria-labelledby=sequence]')
  await section.getByText(/^Worked with .* pig iron/).first().waitFor()
  expect(await section.getByText(/Over the line load/).count()).toBe(0)
  await section.locator('[data-ballast]').focus()
  await page.keyboard.press('Space')
  await section.getByText(/^Worked as she lies/).first().waitFor()
  await section.getByText(/Over the line load: 4\d\.\d t\/m/).waitFor()
  await page.close()
})

/** Tabs on until the place asked for has the focus, as a reader without a mouse does. */
async function tabTo(page: Page, place: Locator): Promise<void> {
  for (let i = 0; i < 400; i++) {
    if (await place.evaluate((e) => e === document.activeElement)) return
    await page.keyboard.press('Tab')
  }
  throw new Error(`not reached by Tab: ${String(place)}`)
}

it('is worked by keyboard alone: ballast, water, blocks, and the hull turned in space', async () => {
  const { page } = await open(browser, program.address, '/docking')
  const section = page.locator('section[aria-labelledby=sequence]')
  await section.getByText(/^Worked with .* pig iron/).first().waitFor()
  await tabTo(page, section.locator('[data-ballast]'))
  await page.keyboard.press('Space')
  await section.getByText(/^Worked as she lies/).first().waitFor()
  await tabTo(page, page.locator('[data-slider=level]'))
  await page.keyboard.press('End')
  expect(Number.parseFloat((await page.locator('[data-at=upthrust]').textContent())!)).toBeGreaterThan(3000)
  const block = page.getByRole('group', { name: 'What the keel blocks carry' }).getByRole('button').nth(1)
  await tabTo(page, block)
  await page.keyboard.press('Space')
  await expect.poll(() => page.locator('[data-left-out]').textContent()).toBe('1 left out')
  await tabTo(page, page.getByRole('button', { name: 'Show the hull in space' }))
  await page.keyboard.press('Enter')
  const hull = page.getByRole('application', { name: /^Hull in space/ })
  await hull.locator('canvas').waitFor()
  await tabTo(page, hull)
  const says = page.locator('[data-seen]')
  const home = await says.textContent()
  expect(home).toMatch(/^Seen from starboard/)
  for (let i = 0; i < 14; i++) await page.keyboard.press('ArrowRight')
  await expect.poll(() => says.textContent()).toMatch(/^Seen from port/)
  await page.keyboard.press('+')
  await expect.poll(() => says.textContent()).toMatch(/closer/)
  await page.keyboard.press('0')
  await expect.poll(() => says.textContent()).toBe(home)
  await page.keyboard.press('Tab')
  expect(await hull.evaluate((e) => e === document.activeElement)).toBe(false)
  await accessible(page)
  await page.close()
}, 60000)

it('shifts a weight and shows hull and hand side by side', async () => {
  const { page } = await open(browser, program.address, '/docking', phone)
  const form = page.locator('form')
  await form.getByLabel('Mass, t').fill('10')
  await form.getByLabel('From aft, m').fill('80')
  await form.getByLabel('Above baseline, m').fill('3')
  await form.getByRole('button', { name: 'Work it out' }).click()
  await page.getByRole('columnheader', { name: 'by hand' }).waitFor()
  await fits(page)
  await page.close()
})
