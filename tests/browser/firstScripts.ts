import { gzipSync } from 'node:zlib'
import type { World } from './world.ts'

/**
 * Compressed size of all script that a browser without a cache loads for the first page or another one, its workers included
 * (kB); not what a service worker takes along for later.
 */
export async function firstScripts({ browser, url }: World, locale = 'en-US', path = '/'): Promise<number> {
  const context = await browser.newContext({ locale, serviceWorkers: 'block' })
  // By address: a second worker gets its script from the cache.
  const scripts = new Map<string, Promise<Buffer>>()
  context.on('response', (response) => {
    if (/javascript/.test(response.headers()['content-type'] ?? '')) scripts.set(response.url(), response.body())
  })
  const page = await context.newPage()
  await page.goto(url + path, { waitUntil: 'networkidle' })
  const bodies = await Promise.all(scripts.values())
  await context.close()
  return bodies.reduce((sum, body) => sum + gzipSync(body).length / 1000, 0)
}
