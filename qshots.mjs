import { chromium } from '@playwright/test'
const b = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox','--disable-gpu'] })
const out = '/tmp/qshots'
import { mkdirSync } from 'node:fs'
mkdirSync(out, { recursive: true })
for (let i = 0; i < 40; i++) { try { if ((await fetch('http://127.0.0.1:4461/health')).ok) break } catch {} await new Promise(r => setTimeout(r, 500)) }
const only = process.argv[2]
for (const [w, h] of [[1280, 900], [390, 844]]) {
  const c = await b.newContext({ viewport: { width: w, height: h } })
  const p = await c.newPage()
  p.setDefaultTimeout(120000)
  p.on('pageerror', e => console.log('pageerror', e.message)); p.on('console', m => m.type() === 'error' && console.log('console', m.text()))
  const t = Date.now()
  await p.goto('http://127.0.0.1:4461/event/breakwater-spring/briefing')
  await p.getByRole('article', { name: 'Coach' }).waitFor()
  console.log(w, 'coach after', Date.now() - t)
  await p.screenshot({ path: `${out}/coach-${w}.png`, fullPage: true })
  for (const copy of ['Partner', 'Strategist']) {
    await p.getByText(copy, { exact: true }).first().click()
    await p.getByRole('article', { name: copy }).waitFor()
    await p.screenshot({ path: `${out}/${copy.toLowerCase()}-${w}.png`, fullPage: true })
  }
  if (w === 1280) for (const copy of ['Coach', 'Partner', 'Strategist']) {
    await p.getByText(copy, { exact: true }).first().click()
    for (const format of ['A4', 'Letter']) {
      const pdf = await p.pdf({ format, path: `${out}/${copy}-${format}.pdf` })
      console.log(copy, format, 'pages', (pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g) ?? []).length)
    }
    await p.emulateMedia({ media: 'print' }); await p.setViewportSize({ width: 673, height: 1010 })
    await p.screenshot({ path: `${out}/print-${copy}.png`, fullPage: true })
    await p.emulateMedia({ media: null }); await p.setViewportSize({ width: w, height: h })
  }
  await p.goto('http://127.0.0.1:4461/event/breakwater-spring/pit')
  await p.getByRole('region', { name: 'Next match' }).waitFor()
  await p.waitForTimeout(4000)
  await p.screenshot({ path: `${out}/pit-${w}.png`, fullPage: true })
  await c.close()
}
await b.close()
