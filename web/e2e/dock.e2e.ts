// The dock sheets on a phone, with the network gone and back again.
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { accessible, connect, fits, phone } from './pages'
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

async function carried(who: string): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ viewport: phone, hasTouch: true })
  const page = await context.newPage()
  await page.goto(`${program.address}/dock`)
  await page.getByLabel('Your name').fill(who)
  await page.getByRole('button', { name: 'Begin' }).click()
  await page.getByRole('heading', { name: 'What do you enter?' }).waitFor()
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await page.waitForFunction(() => caches.match('/dock').then(Boolean))
  return { context, page }
}

async function total(kind: string): Promise<number> {
  const answer = await fetch(`${program.address}/api/v1/records/${kind}`)
  return ((await answer.json()) as { total: number }).total
}

/** Opens the list of what waits, by the line that says how many, and hands over; the queue may have gone by itself when the network came back. */
async function handOver(page: Page): Promise<void> {
  await page.getByText(/^(1 entry waits|All handed over)$/).first().click()
  await page.getByRole('button', { name: 'Hand over now' }).click({ timeout: 2000 }).catch(() => undefined)
  await page.getByText('All handed over').first().waitFor()
}

it('opens and enters without a network from the first visit on, and hands over when it is back', async () => {
  const before = await total('leak')
  const { context, page } = await carried('M')
  await context.setOffline(true)
  await page.reload()
  await page.getByRole('button', { name: 'Leak', exact: true }).click()
  await page.getByLabel('Frame', { exact: true }).fill('66')
  await page.getByRole('button', { name: 'port', exact: true }).click()
  await page.getByRole('button', { name: 'rivet' }).click()
  await page.getByLabel('Rate, L/h').fill('4,5')
  await fits(page)
  await accessible(page)
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('1 entry waits').waitFor()
  expect(await total('leak')).toBe(before)
  await page.reload() // the phone was put away: nothing is lost
  await page.getByText('1 entry waits').waitFor()
  await page.getByText('No network').waitFor()
  await context.setOffline(false)
  await handOver(page)
  expect(await total('leak')).toBe(before + 1)
  await accessible(page)
  await context.close()
})

it('keeps a draft at every tap and says what is missing', async () => {
  const { context, page } = await carried('M')
  await page.getByRole('button', { name: 'Climate' }).click()
  await page.getByLabel('Air, °C').fill('8')
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByRole('alert').filter({ hasText: 'Relative humidity is missing.' }).waitFor()
  await page.getByLabel('Relative humidity, %').fill('740')
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByRole('alert').filter({ hasText: 'from 0 to 100' }).waitFor()
  await page.reload()
  await page.getByRole('button', { name: 'Climate' }).click()
  expect(await page.getByLabel('Air, °C').inputValue()).toBe('8')
  await context.close()
})

it('keeps both of two edits of one found report', async () => {
  const one = await carried('M')
  const two = await carried('H')
  for (const { context, page } of [one, two]) {
    await page.getByRole('button', { name: /^Found reports \(\d+\)/ }).waitFor()
    await page.getByRole('button', { name: /^Found reports \([1-9]/ }).click()
    await context.setOffline(true)
    await page.getByRole('button', { name: /F8/ }).click()
  }
  await one.page.getByRole('button', { name: 'repair', exact: true }).click()
  await one.page.getByLabel('As left').fill('spots primed by M')
  await two.page.getByRole('button', { name: 'leave', exact: true }).click()
  await two.page.getByLabel('As left').fill('left alone by H')
  for (const { context, page } of [one, two]) {
    await page.getByRole('button', { name: 'Save' }).click()
    await page.getByText('1 entry waits').waitFor()
    await context.setOffline(false)
    await handOver(page)
  }
  await two.page.getByText('both are kept').waitFor()
  expect(await total('clash')).toBe(1)
  const stands = (await (await fetch(`${program.address}/api/v1/records/found/found-08`)).json()) as { body: { as_left: string } }
  expect(stands.body.as_left).toBe('spots primed by M')
  const desk = await browser.newPage()
  await desk.goto(`${program.address}/indock`)
  await desk.getByText('left alone by H').first().waitFor()
  await desk.close()
  await one.context.close()
  await two.context.close()
})

it('takes a photograph with its place and direction, original and copy, and refuses what is none', async () => {
  const { context, page } = await carried('M')
  const before = await total('photo')
  await page.getByRole('button', { name: 'Photograph', exact: true }).click()
  const file = page.locator('#photo-file')
  await file.setInputFiles({ name: 'plate.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('MZ\x90\x00 this program cannot be run') })
  await page.getByRole('alert').filter({ hasText: 'no photograph' }).waitFor()
  await file.setInputFiles({ name: 'huge.png', mimeType: 'image/png', buffer: wide(20000, 10000) })
  await page.getByRole('alert').filter({ hasText: '200 megapixels' }).waitFor()
  const picture = Buffer.from(await page.evaluate(async () => {
    const canvas = document.createElement('canvas')
    canvas.width = 2400
    canvas.height = 1800
    canvas.getContext('2d')!.fillRect(100, 100, 900, 700)
    const blob = await new Promise<Blob>((found) => canvas.toBlob((b) => found(b!), 'image/jpeg'))
    return [...new Uint8Array(await blob.arrayBuffer())]
  }))
  await context.setOffline(true)
  await file.setInputFiles({ name: 'plate.jpg', mimeType: 'image/jpeg', buffer: picture })
  await page.getByText('2400 by 1800').waitFor()
  await page.getByLabel('Frame', { exact: true }).fill('44')
  await page.getByRole('button', { name: 'starboard', exact: true }).first().click()
  await page.getByRole('button', { name: 'at the plate' }).click()
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('1 entry waits').waitFor()
  await context.setOffline(false)
  await page.getByText('1 entry waits').click()
  await page.getByRole('button', { name: 'Hand over now' }).click().catch(() => undefined)
  await page.getByText('All handed over').waitFor()
  expect(await total('photo')).toBe(before + 1)
  const list = (await (await fetch(`${program.address}/api/v1/records/photo`)).json()) as { items: { body: { sha256?: string; small_sha256?: string; direction?: string; file?: string } }[] }
  const mine = list.items.find((e) => e.body.file === 'plate.jpg')!
  expect(mine.body.direction).toBe('at the plate')
  const original = Buffer.from(await (await fetch(`${program.address}/api/v1/files/${mine.body.sha256}`)).arrayBuffer())
  expect(original.equals(picture)).toBe(true)
  expect((await fetch(`${program.address}/api/v1/files/${mine.body.small_sha256}`)).ok).toBe(true)
  await context.close()
})

it('asks for the clearance of a bearing, and lights the trigger agreed for it', async () => {
  const { context, page } = await carried('M')
  const lit = async () => ((await (await fetch(`${program.address}/api/v1/brief`)).json()) as { indock: { lit: { trigger: string; finding: string; state: string }[] } }).indock.lit.filter((l) => l.trigger === 'trigger-6' && l.state === 'lit')
  expect(await lit()).toEqual([])
  await context.setOffline(true)
  await page.getByRole('button', { name: 'Found report', exact: true }).click()
  await page.getByRole('button', { name: 'bearing', exact: true }).click()
  await page.getByLabel('Frame', { exact: true }).fill('8')
  await page.getByRole('button', { name: 'starboard', exact: true }).click()
  await page.getByLabel('Clearance, mm').fill('7,2')
  await fits(page)
  await accessible(page)
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('1 entry waits').waitFor()
  await context.setOffline(false)
  await handOver(page)
  await expect.poll(async () => (await lit()).map((l) => l.finding), { timeout: 60_000 }).toEqual(['bearing, clearance 7.2\u202fmm'])
  await context.close()
})

it('saves every sheet on the phone while there is no network, one after the other, and hands all over', async () => {
  const { context, page } = await carried('H')
  const kinds = ['thickness', 'leak', 'film', 'climate', 'day'] as const
  const before = await Promise.all(kinds.map(total))
  await context.setOffline(true)
  const entry = async (sheet: string, label: string, value: string, n: number, more?: [string, string]) => {
    await page.getByRole('button', { name: sheet, exact: true }).click()
    await page.getByLabel(label, { exact: true }).fill(value)
    if (more) await page.getByLabel(more[0], { exact: true }).fill(more[1])
    await fits(page)
    await page.getByRole('button', { name: 'Save' }).click()
    await page.getByText(n === 1 ? '1 entry waits' : `${n} entries wait`).waitFor()
    await page.getByRole('button', { name: 'Back' }).click()
  }
  await entry('Thickness reading', 'Thickness, mm', '9.1', 1)
  await entry('Leak', 'Rate, L/h', '2', 2)
  await entry('Paint film', 'Readings, a space between, µm', '120 131 127', 3)
  await entry('Climate', 'Air, °C', '8,5', 4, ['Relative humidity, %', '74'])
  await entry('Daily entry', 'Done', 'second coat aft', 5)
  await context.setOffline(false)
  await page.getByText('All handed over').first().waitFor({ timeout: 60_000 })
  expect(await Promise.all(kinds.map(total))).toEqual(before.map((n) => n + 1))
  await context.close()
})

it('says that a phone set to 1970 is not set, and dates its entries by the program', async () => {
  const context = await browser.newContext({ viewport: phone })
  const page = await context.newPage()
  await page.clock.setFixedTime(new Date('1970-01-01T00:12:00Z'))
  await page.goto(`${program.address}/dock`)
  await page.getByText('its clock is not set').waitFor()
  await page.getByLabel('Your name').fill('M')
  await page.getByRole('button', { name: 'Begin' }).click()
  await page.getByRole('button', { name: 'Daily entry' }).click()
  await page.getByLabel('Done').fill('by a phone without a clock')
  await page.getByRole('button', { name: 'Save' }).click()
  await expect.poll(async () => JSON.stringify(await (await fetch(`${program.address}/api/v1/records/day`)).json()), { timeout: 30_000 }).toContain('by a phone without a clock')
  const list = (await (await fetch(`${program.address}/api/v1/records/day`)).json()) as { items: { from?: string; body: { date: string; done: string } }[] }
  const mine = list.items.find((e) => e.body.done.startsWith('by a phone'))!
  expect(mine.body.date).toBe('2027-04-19')
  expect(mine.from).toContain('1970-01-01T00:12:00Z')
  await context.close()
})

/** The head of a PNG of so many pixels, with nothing behind it. */
function wide(w: number, h: number): Buffer {
  const head = Buffer.alloc(33)
  Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]).copy(head)
  head.write('IHDR', 12)
  head.writeUInt32BE(w, 16)
  head.writeUInt32BE(h, 20)
  return head
}
