import { gzipSync } from 'node:zlib'
import { openWorld, type World } from '../browser/world.ts'
import type { BenchEntry } from './entry.ts'

/** Compressed size of all script that a browser without a cache loads for the first page, its worker included (kB). */
async function firstScripts({ browser, url }: World): Promise<number> {
  const context = await browser.newContext()
  // By address: a second worker gets its script from the cache.
  const scripts = new Map<string, Promise<Buffer>>()
  context.on('response', (response) => {
    if (/javascript/.test(response.headers()['content-type'] ?? '')) scripts.set(response.url(), response.body())
  })
  const page = await context.newPage()
  await page.goto(url, { waitUntil: 'networkidle' })
  const bodies = await Promise.all(scripts.values())
  await context.close()
  return bodies.reduce((sum, body) => sum + gzipSync(body).length / 1000, 0)
}

const entries: BenchEntry[] = [
  {
    name: 'web.first',
    unit: 'kB compressed',
    better: 'lower',
    open: async () => {
      const world = await openWorld()
      return { run: () => firstScripts(world), close: () => world.close() }
    },
  },
]

export default entries
