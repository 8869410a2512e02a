// Takes the pictures of README.md from the demonstration ship: npm run shots (after `make build`).
import { spawn } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { chromium } from 'playwright-core'

const out = '../docs/img/'
const day = '2026-11-25'
const shots = [
  { name: 'front', path: '/', width: 1600, height: 1000 },
  { name: 'ship', path: '/ship', width: 1600, height: 1000 },
  { name: 'standing', path: '/standing', width: 1600, height: 1000 },
  { name: 'outlook', path: '/outlook', width: 1600, height: 1000 },
  { name: 'calendar', path: '/calendar', width: 1600, height: 1300 },
  { name: 'docking', path: '/docking', width: 1600, height: 1000 },
  { name: 'phone', path: '/', width: 360, height: 780 },
]

const program = spawn('../bin/oakum', ['demo', '--listen', '127.0.0.1:0'], { stdio: ['ignore', 'pipe', 'inherit'] })
const base = await new Promise((resolve, reject) => {
  let said = ''
  program.stdout.on('data', (chunk) => {
    said += chunk
    const found = /http:\/\/[^\s]+/.exec(said)
    if (found) resolve(found[0])
  })
  program.on('exit', () => reject(new Error('the program stopped: ' + said)))
})

mkdirSync(out, { recursive: true })
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
})
try {
  for (const shot of shots) {
    const page = await browser.newPage({ viewport: { width: shot.width, height: shot.height } })
    await page.goto(`${base}${shot.path}?day=${day}`, { waitUntil: 'networkidle', timeout: 120_000 })
    await page.waitForTimeout(1000)
    await page.screenshot({ path: `${out}${shot.name}.png` })
    await page.close()
    console.log(shot.name)
  }
} finally {
  await browser.close()
  program.kill()
}
