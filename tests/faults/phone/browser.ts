import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { type BrowserContext, chromium, type Page } from '@playwright/test'
import { chromiumPath } from '../../browser/world.ts'

/** A browser with a profile of its own, as a phone has it: what is in the profile is all that a kill leaves. */
export interface Phone {
  context: BrowserContext
  page: Page
  /** As an empty battery would: all its processes at once, without a word. */
  kill(): Promise<void>
  close(): Promise<void>
}

const flags = [
  '--headless',
  '--remote-debugging-port=0',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--lang=en-GB',
]

/** The address that a starting browser prints for its tools. */
function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let printed = ''
    child.stderr!.on('data', (chunk) => {
      printed += chunk
      const found = /DevTools listening on (ws:\S+)/.exec(printed)
      if (found) resolve(found[1]!)
    })
    child.once('close', () => reject(new Error(`The browser ended before it was ready: ${printed}`)))
  })
}

/** Starts the browser on the profile in `folder`, with one page at 390 px. */
export async function startPhone(folder: string): Promise<Phone> {
  // A group of its own, which can be killed as a whole.
  const child = spawn(chromiumPath(), [...flags, `--user-data-dir=${folder}`, 'about:blank'], {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
  })
  const browser = await chromium.connectOverCDP(await addressOf(child))
  const [context] = browser.contexts()
  const page = context!.pages()[0] ?? (await context!.newPage())
  await page.setViewportSize({ width: 390, height: 844 })
  const end = async (signal: 'SIGKILL' | 'SIGTERM') => {
    if (child.exitCode !== null || child.signalCode !== null) return
    const closed = once(child, 'close')
    process.kill(-child.pid!, signal)
    await closed
    await browser.close().catch(() => {})
  }
  return { context: context!, page, kill: () => end('SIGKILL'), close: () => end('SIGKILL') }
}
