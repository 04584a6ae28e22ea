import { mkdirSync } from 'node:fs'
import { chromium } from '@playwright/test'
import { buildApp, onlyWorkspace } from './src/app.ts'
import { seedIfEmpty } from './src/seeding.ts'
import { openStore } from './src/store/index.ts'
mkdirSync('/tmp/designs-shots-de', { recursive: true })
const store = await openStore(`file:/tmp/designs-shots-de/t${process.pid}.db`)
await seedIfEmpty(store, onlyWorkspace)
const app = await buildApp({ store, webRoot: '/tmp/designs-web-de' })
const url = await app.listen({ port: 0, host: '127.0.0.1' })
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] })
const only = process.argv[2]
for (const [width, scheme] of [[390, 'light']] as const) {
  const context = await browser.newContext({ viewport: { width, height: 850 }, colorScheme: scheme, locale: 'de-DE' })
  const page = await context.newPage()
  page.setDefaultTimeout(90000)
  if (!only || only === 'design') {
    await page.goto(url + '/designs/shearwater')
    await page.getByText('Der eine Ruf').waitFor()
    await page.getByRole('button', { name: 'Punkten', exact: true }).click()
    await page.locator('g[data-stage="hook-on"]').first().click()
    await page.getByText('Ablauf: Two on the gantry').click()
    await page.getByRole('button', { name: 'Einen Punkt hinzufügen' }).click()
    await page.getByText('Der Roboter: Größe').click()
    await page.getByText('Was er kann: Orte').click()
    await page.getByLabel('Anderer Entwurf', { exact: true }).selectOption({ label: 'Kittiwake' })
    await page.getByText('Punkte je Match: Shearwater').waitFor()
    await page.waitForTimeout(1500)
    const wider = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
    console.log(width, 'wider', wider)
    const tall = await page.evaluate(() => document.documentElement.scrollHeight)
    const part = width > 1000 ? 1900 : 1500
    for (let y = 0, n = 0; y < tall; y += part, n++)
      await page.screenshot({ path: `/tmp/designs-shots-de/design-${width}-${n}.png`, fullPage: true, clip: { x: 0, y, width, height: Math.min(part, tall - y) } })
  }
  if (!only || only === 'watch') {
    await page.goto(url + '/designs/shearwater/stopwatch?what=score/gantry/0/stage/hook-on')
    for (const time of ['1.2', '1.3', '1.1', '1.25', '4']) {
      await page.getByLabel('Zeit', { exact: true }).fill(time)
      await page.keyboard.press('Enter')
    }
    await page.getByRole('button', { name: 'Start', exact: true }).click()
    await page.waitForTimeout(800)
    await page.getByRole('button', { name: 'Nächste', exact: true }).click()
    await page.getByRole('button', { name: /^Zeit 5, .*streichen/ }).click()
    console.log('wider', await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth))
    await page.screenshot({ path: `/tmp/designs-shots-de/watch-${width}.png`, fullPage: true })
  }
  await context.close()
}
await browser.close(); await app.close(); await store.close()
