import { chromium } from 'playwright-core'
const base = 'http://127.0.0.1:7801', out = '/tmp/lead/shots/'
const b = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] })
const want = process.argv[2] ? process.argv[2].split(',') : ['', 'ship', 'standing', 'outlook', 'choices', 'money', 'calendar', 'docking', 'record']
for (const p of want) for (const w of (process.argv[3] ?? '1600,360').split(',').map(Number)) {
  const page = await b.newPage({ viewport: { width: w, height: w > 500 ? 1000 : 780 } })
  const errs = []
  page.on('console', m => m.type() === 'error' && errs.push(m.text()))
  const t = Date.now()
  await page.goto(`${base}/${p}?day=2026-11-25`, { waitUntil: 'networkidle', timeout: 120000 })
  await page.waitForTimeout(800)
  await page.screenshot({ path: `${out}${p || 'front'}-${w}.png`, fullPage: true })
  const h = await page.evaluate(() => [document.documentElement.scrollHeight, document.documentElement.scrollWidth])
  console.log(p || 'front', w, Date.now() - t, 'ms', h.join('x'), errs.join('|'))
  await page.close()
}
await b.close()
