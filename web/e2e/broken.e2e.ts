// The network lost on the way: whatever half of the queue was gone, it goes again, and nothing is lost or doubled. Without the page's keeper, so that every
// request can be broken by hand.
import { writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import type { Browser, BrowserContext, Page, Route } from 'playwright-core'
import { connect, phone } from './pages'
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

async function carried(who = 'M'): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ viewport: phone, hasTouch: true, serviceWorkers: 'block' })
  const page = await context.newPage()
  await page.goto(`${program.address}/dock`)
  await page.getByLabel('Your name').fill(who)
  await page.getByRole('button', { name: 'Begin' }).click()
  await page.getByText('The laptop answers').waitFor()
  return { context, page }
}

interface Kept {
  id: string
  body: Record<string, unknown>
}
async function all(kind: string): Promise<Kept[]> {
  return ((await (await fetch(`${program.address}/api/v1/records/${kind}?limit=1000`)).json()) as { items: Kept[] }).items
}

async function handOver(page: Page): Promise<void> {
  await page.locator('header button').click()
  await page.getByRole('button', { name: 'Hand over now' }).click({ timeout: 5000 })
}

/** Lets a request arrive, and loses the answer. */
async function answerLost(route: Route): Promise<void> {
  await route.fetch()
  await route.abort('connectionreset')
}

async function picture(page: Page): Promise<Buffer> {
  return Buffer.from(await page.evaluate(async () => {
    const canvas = document.createElement('canvas')
    canvas.width = 900
    canvas.height = 700
    const pen = canvas.getContext('2d')!
    for (let i = 0; i < 400; i++) {
      pen.fillStyle = `hsl(${Math.random() * 360} 50% 50%)`
      pen.fillRect(Math.random() * 900, Math.random() * 700, 60, 60)
    }
    const blob = await new Promise<Blob>((found) => canvas.toBlob((b) => found(b!), 'image/jpeg'))
    return [...new Uint8Array(await blob.arrayBuffer())]
  }))
}

it('sends an entry again whose answer was lost after the program had it, and it lands once', async () => {
  const { context, page } = await carried()
  const before = (await all('leak')).length
  await page.route('**/api/v1/merge', answerLost, { times: 1 })
  await page.getByRole('button', { name: 'Leak', exact: true }).click()
  await page.getByLabel('Notes').fill('the answer was lost')
  await page.getByRole('button', { name: 'Save' }).click()
  await expect.poll(async () => (await all('leak')).length, { timeout: 30_000 }).toBe(before + 1) // the program has it, the phone does not know
  await page.getByText('1 entry waits').waitFor()
  await handOver(page)
  await page.getByText('All handed over').first().waitFor()
  expect((await all('leak')).length).toBe(before + 1)
  await context.close()
})

it('sends a photograph again that broke half way or whose answer was lost, while a reading goes ahead of it', async () => {
  const { context, page } = await carried()
  const [photos, readings, founds] = [(await all('photo')).length, (await all('thickness')).length, (await all('found')).length]
  let broken = 0
  await page.route('**/api/v1/photos**', async (route) => {
    broken++
    if (broken === 1) return route.abort('connectionreset') // on the way
    if (broken === 2) { // half of it arrives
      const half = route.request().postDataBuffer()!
      const answer = await route.fetch({ postData: half.subarray(0, half.length / 2) })
      expect(answer.status()).toBe(422)
      return route.fulfill({ response: answer })
    }
    if (broken === 3) return answerLost(route)
    return route.continue()
  })
  await context.setOffline(true)
  await page.getByRole('button', { name: 'Found report', exact: true }).click()
  await page.getByRole('button', { name: 'crack', exact: true }).click()
  await page.locator('#photo-file').setInputFiles({ name: 'crack.jpg', mimeType: 'image/jpeg', buffer: await picture(page) })
  await page.getByText('900 by 700').waitFor()
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('2 entries wait').waitFor()
  await page.getByRole('button', { name: 'Back' }).click()
  await page.getByRole('button', { name: 'Thickness reading' }).click()
  await page.getByLabel('Thickness, mm').fill('9,4')
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('3 entries wait').waitFor()
  await context.setOffline(false)
  await expect.poll(async () => (await all('thickness')).length, { timeout: 30_000 }).toBe(readings + 1)
  for (let i = 0; i < 6 && (await page.getByText('All handed over').count()) === 0; i++) {
    await handOver(page)
    await page.waitForTimeout(500)
  }
  await page.getByText('All handed over').first().waitFor()
  expect(broken).toBeGreaterThanOrEqual(5) // three that broke, the original again, and the copy
  expect([(await all('photo')).length, (await all('thickness')).length, (await all('found')).length]).toEqual([photos + 1, readings + 1, founds + 1])
  const mine = (await all('photo')).find((p) => p.body.file === 'crack.jpg')!
  const report = (await all('found')).find((f) => f.id === mine.body.about)!
  expect(report.body.photos).toEqual([mine.id])
  for (const sum of [mine.body.sha256, mine.body.small_sha256]) expect((await fetch(`${program.address}/api/v1/files/${sum}`)).ok).toBe(true)
  await context.close()
})

it('sends the half of a long queue that had not gone', async () => {
  const { context, page } = await carried('H')
  const before = (await all('climate')).length
  let lots = 0
  await page.route('**/api/v1/merge', (route) => (++lots === 2 ? route.abort('connectionreset') : route.continue()))
  await page.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((found) => {
      const asked = indexedDB.open('oakum-dock', 1)
      asked.onsuccess = () => found(asked.result)
    })
    const t = db.transaction(['queue'], 'readwrite')
    for (let i = 0; i < 700; i++) {
      const made_at = new Date().toISOString()
      t.objectStore('queue').put({ key: `long-${String(i).padStart(4, '0')}`, kind: 'climate', id: crypto.randomUUID(), version: 0, made_at, label: `Climate ${i}`, files: [], body: { air: i % 30, humidity: 60 } })
    }
    await new Promise((found) => (t.oncomplete = found))
  })
  await handOver(page)
  await expect.poll(() => lots, { timeout: 30_000 }).toBe(2)
  await page.reload()
  await page.getByText('All handed over').first().waitFor()
  expect(lots).toBe(3)
  const list = (await (await fetch(`${program.address}/api/v1/records/climate`)).json()) as { total: number }
  expect(list.total).toBe(before + 700)
  await context.close()
})

it('says that the laptop’s disk is full, keeps everything, and hands over when there is room', async () => {
  const { context, page } = await carried()
  const before = (await all('leak')).length
  await page.route('**/api/v1/merge', (route) => route.fulfill({ status: 507, contentType: 'application/problem+json', body: JSON.stringify({ status: 507, title: 'the disk is full', detail: 'ship.oakum: the disk is full: make room and do it again' }) }), { times: 1 })
  await page.getByRole('button', { name: 'Leak', exact: true }).click()
  await page.getByLabel('Notes').fill('no room')
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('the disk is full: make room and do it again').waitFor()
  await page.getByText('1 entry waits').waitFor()
  await handOver(page)
  await page.getByText('All handed over').first().waitFor()
  expect((await all('leak')).length).toBe(before + 1)
  await context.close()
})

it('opens an entry that still waits, or was not taken, and mends it', async () => {
  const { context, page } = await carried()
  await context.setOffline(true)
  await page.getByRole('button', { name: 'Thickness reading' }).click()
  await page.getByLabel('Frame', { exact: true }).fill('no such frame')
  await page.getByLabel('Thickness, mm').fill('71')
  await page.getByRole('button', { name: 'Save' }).click()
  await page.locator('header button').click()
  await page.getByRole('button', { name: 'Mend it' }).click()
  expect(await page.getByLabel('Thickness, mm').inputValue()).toBe('71')
  await page.getByLabel('Frame', { exact: true }).fill('71')
  await page.getByLabel('Thickness, mm').fill('7.1')
  await page.getByLabel('Notes').fill('mended')
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('1 entry waits').waitFor() // one, not two
  await context.setOffline(false)
  await expect.poll(async () => (await all('thickness')).find((r) => r.body.notes === 'mended')?.body.thickness, { timeout: 30_000 }).toBe(7.1)
  await context.close()
})

it('carries a queue by hand to another phone, and lands it once though the first gets through after all', async () => {
  const { context, page } = await carried()
  const before = (await all('found')).length
  await context.setOffline(true)
  await page.getByRole('button', { name: 'Found report', exact: true }).click()
  await page.getByRole('button', { name: 'gland', exact: true }).click()
  await page.locator('#photo-file').setInputFiles({ name: 'gland.jpg', mimeType: 'image/jpeg', buffer: await picture(page) })
  await page.getByText('900 by 700').waitFor()
  await page.getByRole('button', { name: 'Save' }).click()
  await page.locator('header button').click()
  await page.getByText('Carry it by hand').click()
  const [file] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save what waits as a file' }).click()])
  const path = join(tmpdir(), file.suggestedFilename())
  await file.saveAs(path)

  const other = await carried('H')
  await other.page.locator('header button').click()
  await other.page.getByText('Carry it by hand').click()
  const none = join(tmpdir(), 'no-queue.json')
  await writeFile(none, '{"oakum_queue": 1, "entries": "none"}')
  await other.page.locator('#carried').setInputFiles(none)
  await other.page.getByText('no-queue.json is no saved queue').waitFor()
  await other.page.locator('#carried').setInputFiles(path)
  await other.page.getByText('2 entries taken over').waitFor()
  await other.page.getByRole('button', { name: 'Hand over now' }).click()
  await other.page.getByText('All handed over').first().waitFor()
  expect((await all('found')).length).toBe(before + 1)

  await context.setOffline(false)
  await page.getByText('All handed over').first().waitFor({ timeout: 30_000 })
  expect((await all('found')).length).toBe(before + 1)
  expect((await all('photo')).filter((p) => p.body.file === 'gland.jpg').length).toBe(1)
  await context.close()
  await other.context.close()
})
