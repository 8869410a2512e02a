// Opening pages as a reader does, and what every page owes every reader.
import AxeSource from 'axe-core'
import { chromium, type Browser, type Page } from 'playwright-core'
import { expect, inject } from 'vitest'

export function connect(): Promise<Browser> {
  return chromium.connect(inject('browser'))
}

export const phone = { width: 360, height: 740 }
export const desk = { width: 1600, height: 1000 }

export interface Opened {
  page: Page
  /** What the page complained of, and what it asked of any other machine. */
  complaints: string[]
}

export async function open(browser: Browser, address: string, path: string, viewport = desk): Promise<Opened> {
  const page = await browser.newPage({ viewport })
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text())
  })
  page.on('pageerror', (err) => complaints.push(String(err)))
  page.on('request', (request) => {
    if (!request.url().startsWith(address) && !/^(data|blob):/.test(request.url())) complaints.push(`asked of another machine: ${request.url()}`)
  })
  await page.goto(address + path, { waitUntil: 'networkidle' })
  await page.locator('h1').first().waitFor()
  return { page, complaints }
}

/** WCAG 2.2 at level AA, as far as a program can tell. */
export async function accessible(page: Page): Promise<void> {
  await page.evaluate(AxeSource.source)
  const found = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof AxeSource }
    const result = await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })
    return result.violations.map((v) => `${v.id}: ${v.help}\n  ${v.nodes.map((n) => n.html).join('\n  ')}`)
  })
  expect(found).toEqual([])
}

/** Nothing stands out of the window to the side. */
export async function fits(page: Page): Promise<void> {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)
  expect(over, 'pixels beyond the window').toBeLessThanOrEqual(0)
}
