import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { seededEvent } from '../../seed/event/index.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

const { event } = seededEvent()
const at = (part: string) => `/event/${event.id}/${part}`

/** How many rows a table of this browser has; none where there is no such database. */
const rows = (page: Page, of: { database: string; table: string }) =>
  page.evaluate(async ({ database, table }) => {
    const known = await indexedDB.databases()
    if (!known.some(({ name }) => name === database)) return 0
    const opened = await new Promise<IDBDatabase>((resolve, reject) => {
      const asked = indexedDB.open(database)
      asked.onsuccess = () => resolve(asked.result)
      asked.onerror = () => reject(asked.error)
    })
    try {
      if (!opened.objectStoreNames.contains(table)) return 0
      const count = opened.transaction(table).objectStore(table).count()
      return await new Promise<number>((resolve) => {
        count.onsuccess = () => resolve(count.result)
      })
    } finally {
      opened.close()
    }
  }, of)
const ratings = { database: 'cyclewright-selections', table: 'ratings' }
const packs = { database: 'cyclewright-events', table: 'packs' }

describe.runIf(inLongForm)('the pages between matches', () => {
  let world: World
  beforeAll(async () => {
    world = await openWorld()
  })
  afterAll(() => world.close())

  test('open anew without a connection, and say how old what they show is', async () => {
    const page = await world.open(at('briefing'), { serviceWorkers: 'allow' })
    const context = page.context()
    await page.getByRole('article', { name: 'Coach', exact: true }).waitFor({ timeout: 150_000 })
    // After a while on an event's pages the browser keeps the pages, the robots and what a selection is worked out from.
    await expect.poll(() => rows(page, ratings), { timeout: 150_000 }).toBe(1)
    await page.evaluate(() => navigator.serviceWorker.ready)
    await context.setOffline(true)

    await page.reload()
    await page.getByText(/^The server can not be reached\. This is what was known on /).waitFor()
    await page.getByRole('article', { name: 'Coach', exact: true }).waitFor()
    await page
      .getByRole('article')
      .getByText(/Made by this browser\./)
      .waitFor()

    await page.goto(world.url + at('pit'))
    await page.getByRole('region', { name: 'Next match' }).waitFor()
    await page.getByText(/^The server can not be reached\. This is what was known on /).waitFor()

    await page.goto(world.url + at('picks'))
    await page.getByText(/^The server can not be reached: worked out from what was known on /).waitFor()
    await page.getByRole('region', { name: 'Pick order', exact: true }).getByRole('rowheader').first().waitFor()

    // What only the server knows says so, and where one can go.
    await page.goto(world.url + at('results'))
    await page.getByText('The event could not be loaded').waitFor()
    await page.getByRole('link', { name: 'Briefing' }).click()
    await page.getByRole('article', { name: 'Coach', exact: true }).waitFor()

    const kept = await page.evaluate(async () => {
      const names = (await caches.keys()).filter((name) => name.startsWith('cyclewright-event/'))
      const caught = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()))
      return caught.flat().map(({ url }) => new URL(url).pathname)
    })
    expect(kept).toContain('/index.html')
    expect(kept.filter((name) => !/^\/(assets\/|index\.html$)/.test(name))).toEqual([])
    await context.close()
  })

  test('leave nothing of an event on a device that was signed out from elsewhere', async () => {
    const page = await world.open(at('picks'))
    await expect.poll(() => rows(page, ratings), { timeout: 150_000 }).toBe(1)
    expect(await rows(page, packs)).toBe(1)
    await page.route('**/trpc/*session.get*', async (route) => {
      const response = await route.fetch()
      const answers = (await response.json()) as { result: { data: unknown } }[]
      const names = new URL(route.request().url()).pathname.split('/').at(-1)!.split(',')
      answers[names.indexOf('session.get')]!.result.data = {
        claimed: true,
        workspace: null,
        person: null,
        device: null,
        role: null,
      }
      await route.fulfill({ response, json: answers })
    })
    await page.goto(`${world.url}/`)
    await expect.poll(async () => [await rows(page, packs), await rows(page, ratings)]).toEqual([0, 0])
    await page.context().close()
  })
})
