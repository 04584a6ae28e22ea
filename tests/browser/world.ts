import { existsSync } from 'node:fs'
import { copyFile, cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type Browser, type BrowserContextOptions, chromium, type Page } from '@playwright/test'
import { buildApp } from '../../src/app.ts'
import { projectRoot } from '../../src/root.ts'
import { openStore } from '../../src/store/index.ts'
import type { Store } from '../../src/store/types.ts'
import { type Ground, seededDatabase } from './ground.ts'

/** The real server on a database of its own with the demo season, today's screens, and a real browser. */
export interface World {
  url: string
  browser: Browser
  store: Store
  /** Folder of the built screens. */
  webRoot: string
  /** A new page in a browser context of its own, which fails the test on an error in the page. */
  open(path: string, options?: BrowserContextOptions): Promise<Page>
  /** What went wrong in the pages so far: errors thrown, and errors in the console. */
  errors: string[]
  close(): Promise<void>
}

/** Without a window's parts the same browser takes two thirds of the time; the whole one does where there is no other. */
export const chromiumPath = (): string =>
  process.env.CHROMIUM_PATH ?? ['/usr/bin/chromium-headless-shell'].find(existsSync) ?? '/usr/bin/chromium'

const flags =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync'

const film = (file?: string): string[] =>
  file === undefined
    ? []
    : [
        '--use-fake-ui-for-media-stream',
        '--use-fake-device-for-media-stream',
        `--use-file-for-fake-video-capture=${file}`,
      ]

/** Made once for all tests (build.ts). A benchmark runs without Vitest, and takes the screens that `npm run bench` has built before. */
async function ground(): Promise<Ground> {
  if (process.env['VITEST']) return (await import('vitest')).inject('ground')
  return { screens: join(projectRoot(), 'dist', 'web'), database: null }
}

/** `camera`: a film (YUV4MPEG2) that the browser takes for its camera's. */
export async function openWorld(more: { camera?: string } = {}): Promise<World> {
  if (!existsSync(chromiumPath()))
    throw new Error(
      `No browser at ${chromiumPath()}: install Debian’s chromium-headless-shell or chromium, or set CHROMIUM_PATH.`,
    )
  const folder = await mkdtemp(join(tmpdir(), 'cyclewright-browser-'))
  // Copies, which a test may change.
  const { screens, database } = await ground()
  const [webRoot, file] = [join(folder, 'web'), join(folder, 'test.db')]
  await cp(screens, webRoot, { recursive: true })
  await (database ? copyFile(database, file) : seededDatabase(file))
  const store = await openStore(`file:${file}`)
  const app = await buildApp({ store, webRoot })
  const url = await app.listen({ port: 0, host: '127.0.0.1' })
  const browser = await chromium.launch({
    executablePath: chromiumPath(),
    args: [...flags.split(' '), ...film(more.camera)],
  })
  const errors: string[] = []
  return {
    url,
    browser,
    store,
    webRoot,
    errors,
    open: async (path, options) => {
      const context = await browser.newContext({
        viewport: { width: 1280, height: 900 },
        // Requests of a page with a service worker can not be held up; the one test of it lets it be.
        serviceWorkers: 'block',
        ...options,
      })
      const page = await context.newPage()
      page.setDefaultTimeout(60_000)
      page.on('pageerror', (error) => errors.push(`${page.url()}: ${error.message}`))
      page.on('console', (message) => {
        if (message.type() === 'error') errors.push(`${page.url()}: ${message.text()}`)
      })
      await page.goto(url + path)
      return page
    },
    close: async () => {
      await browser.close()
      await app.close()
      await store.close()
      await rm(folder, { recursive: true, force: true })
    },
  }
}

/** The expected points that a design's screen shows, as soon as there are any. */
export async function shownPoints(page: Page): Promise<number> {
  const text = page.getByTestId('points')
  await text.filter({ hasText: /\d/ }).waitFor()
  return Number(((await text.textContent()) ?? '').replace('\u2212', '-'))
}

/** The bars of the cycle strip, by the name of their stage. */
export const bar = (page: Page, name: string) =>
  page
    .getByRole('group', { name: 'Cycle strip' })
    .getByRole('slider', { name: `${name}, seconds` })
    .first()

/** Chooses units in the panel of settings, and closes it. */
export async function chooseUnits(page: Page, units: 'metric' | 'inchPound'): Promise<void> {
  await page.getByRole('button', { name: 'Settings and help' }).click()
  await page.getByLabel('Units').selectOption(units)
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
}
