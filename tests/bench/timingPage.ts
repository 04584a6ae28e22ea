import { join } from 'node:path'
import { chromium } from '@playwright/test'
import { build, loadConfigFromFile, type Rollup } from 'vite'
import { projectRoot } from '../../src/root.ts'
import { chromiumPath } from '../browser/world.ts'
import type { TimingPage } from './timing.page.ts'

/** The calculators in a page of a real browser, built as the screens are. */
export async function openTimingPage() {
  // Read by vite itself: bundled with the benchmarks it would look for its files beside them.
  const screens = await loadConfigFromFile(
    { command: 'build', mode: 'production' },
    join(projectRoot(), 'vite.config.ts'),
  )
  const built = await build({
    configFile: false,
    logLevel: 'error',
    // The screens' own plugins look for screens.
    resolve: screens?.config.resolve ?? {},
    build: {
      write: false,
      target: 'es2022',
      lib: { entry: join(projectRoot(), 'tests/bench/timing.page.ts'), formats: ['iife'], name: 'timingBench' },
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
