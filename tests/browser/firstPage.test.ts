import { afterAll, beforeAll, expect, test } from 'vitest'
import { firstScripts } from './firstScripts.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

test.each(['en-US', 'de-DE'])('the first page loads at most 250 kB of compressed script in %s', async (locale) => {
  const size = await firstScripts(world, locale)
  expect(size).toBeGreaterThan(100)
  expect(size).toBeLessThanOrEqual(250)
})

test.each(['en-US', 'de-DE'])('the stands load at most 150 kB of compressed script in %s', async (locale) => {
  const size = await firstScripts(world, locale, '/stands/')
  expect(size).toBeGreaterThan(50)
  expect(size).toBeLessThanOrEqual(150)
})
