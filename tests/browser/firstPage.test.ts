import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { firstScripts } from './firstScripts.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  // As it is delivered: with libraries that do not check what only a developer needs.
  vi.stubEnv('NODE_ENV', 'production')
  world = await openWorld()
})
afterAll(async () => {
  await world.close()
  vi.unstubAllEnvs()
})

test.each(['en-US', 'de-DE'])('the first page loads at most 250 kB of compressed script in %s', async (locale) => {
  const size = await firstScripts(world, locale)
  expect(size).toBeGreaterThan(100)
  expect(size).toBeLessThanOrEqual(250)
})
