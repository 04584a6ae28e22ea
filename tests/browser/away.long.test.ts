import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { buildApp } from '../../src/app.ts'
import { openStore } from '../../src/store/index.ts'
import { screens, settled } from './screens.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

/** Screens that show something of the server. */
const asking = screens.filter(({ path }) => !['/help', '/guess', '/no-such-screen'].includes(path))

describe('opened while the server is away, a screen says so and comes when it is asked again', () => {
  test.each(asking)('$path', async ({ path, ready }) => {
    const page = await world.open('/help')
    let away = true
    await page.route(/\/(trpc|api)\//, (route) => (away ? route.abort('connectionrefused') : route.continue()))
    await page.goto(world.url + path)
    await page.getByText('The server does not answer.').first().waitFor()
    await page.getByRole('button', { name: 'Try again' }).first().waitFor()
    // Nothing goes on loading that never comes.
    await expect.poll(() => page.getByText(/^Loading .* …$/).allTextContents(), { timeout: 20_000 }).toEqual([])
    away = false
    // Where several are missing, asking for one may bring the others.
    const again = page.getByRole('button', { name: 'Try again' })
    await expect
      .poll(async () => {
        if ((await again.count()) > 0)
          await again
            .first()
            .click({ timeout: 1000 })
            .catch(() => undefined)
        return again.count()
      })
      .toBe(0)
    await settled(page, ready)
    await page.context().close()
  })
})

describe('in a workspace without anything', () => {
  test.each(['/quick-sheet', '/designs', '/trade-offs', '/decisions'])('%s leads to the games', async (path) => {
    const folder = await mkdtemp(join(tmpdir(), 'cyclewright-empty-'))
    const store = await openStore(`file:${join(folder, 'empty.db')}`)
    const app = await buildApp({ store, webRoot: world.webRoot })
    const url = await app.listen({ port: 0, host: '127.0.0.1' })
    const page = await world.open('/help')
    await page.goto(url + path)
    await page.getByRole('link', { name: 'Enter a game first' }).click()
    await page.getByRole('heading', { name: 'No game yet' }).waitFor()
    expect(await page.getByText('Make one below').count()).toBe(1)
    await page.context().close()
    await app.close()
    await store.close()
    await rm(folder, { recursive: true, force: true })
  })
})
