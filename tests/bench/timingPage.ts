import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { build, type Rollup } from 'vite'
import screens from '../../vite.config.ts'
import { chromiumPath } from '../browser/world.ts'
import type { TimingPage } from './timing.page.ts'

/** The calculators in a page of a real browser, built as the screens are. */
export async function openTimingPage() {
  const built = await build({
    configFile: false,
    logLevel: 'error',
    // The screens' own plugins look for screens.
    resolve: screens.resolve ?? {},
    build: {
      write: false,
      target: 'es2022',
      lib: { entry: join(import.meta.dirname, 'timing.page.ts'), formats: ['iife'], name: 'timingBench' },
    },
  })
  const code = [built].flat().flatMap((each) => ('output' in each ? (each as Rollup.RollupOutput).output : []))
  const script = code.find((each) => each.type === 'chunk')
  if (script?.type !== 'chunk') throw new Error('the page has no script')
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: ['--no-sandbox', '--disable-gpu'] })
  const page = await browser.newPage()
  await page.addScriptTag({ content: script.code })
  return {
    each: (turns: number) =>
      page.evaluate((count) => (globalThis as unknown as { timingPage: TimingPage }).timingPage.each(count), turns),
    sweep: () => page.evaluate(() => (globalThis as unknown as { timingPage: TimingPage }).timingPage.sweep()),
    close: () => browser.close(),
  }
}
