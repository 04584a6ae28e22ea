import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { onlyWorkspace } from '../../src/app.ts'
import type { Assignment } from '../../src/model/scouting/index.ts'
import { seedIfEmpty } from '../../src/seeding.ts'
import { type Server, startServer } from '../api/server.ts'
import { claim, join, type Member } from '../api/team.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

const event = 'breakwater-spring'

const nextOf = (page: Page) => page.getByRole('region', { name: 'Your next match' })

describe.runIf(inLongForm)('two phones of a claimed server', () => {
  let world: World
  let server: Server
  beforeAll(async () => {
    world = await openWorld()
    server = await startServer({ webRoot: world.webRoot, pool: { threads: 1 } })
    await seedIfEmpty(server.store, onlyWorkspace)
  })
  afterAll(async () => {
    await server.close()
    await world.close()
  })

  /** A phone on which somebody is signed in, with the event open. */
  async function phoneOf({ cookie }: Member) {
    const context = await world.browser.newContext({ serviceWorkers: 'block', viewport: { width: 390, height: 844 } })
    const [name = '', value = ''] = cookie.split('=')
    await context.addCookies([{ name, value, url: server.url }])
    const page = await context.newPage()
    await page.goto(`${server.url}/stands/`)
    return page
  }

  test('change seats when one takes over the other’s, and each sees its own next', async () => {
    const lead = await claim(server)
    const anna = await join(server, lead, { role: 'scout', nickname: 'Anna' })
    const ben = await join(server, lead, { role: 'scout', nickname: 'Ben' })
    const address = `/api/events/${event}/assignments`
    const match = 'qualification-24'
    const at = (position: 1 | 2, person: string): Assignment => ({ match, seat: { alliance: 'red', position }, person })
    const { mark } = (await lead.get(address)).body
    expect((await lead.send('PUT', address, { mark, assignments: [at(1, anna.id), at(2, ben.id)] })).status).toBe(200)

    const [hers, his] = [await phoneOf(anna), await phoneOf(ben)]
    await nextOf(hers).getByText('Red, position 1').waitFor()
    await nextOf(his).getByText('Red, position 2').waitFor()

    await his.getByRole('link', { name: 'Another match or robot' }).click()
    await his.getByLabel('Match', { exact: true }).selectOption({ label: 'Qualification 24' })
    await his.getByRole('button', { name: 'Red, position 1' }).filter({ hasText: 'Anna watches' }).click()
    await his.getByText('This seat is somebody else’s. If you record it, it becomes yours.').waitFor()
    await his.getByRole('button', { name: 'Go on' }).click()
    const seats = async () =>
      ((await lead.get(address)).body.assignments as Assignment[])
        .filter((each) => each.match === match && each.seat.alliance === 'red' && each.person !== null)
        .map(({ seat, person }) => [seat.position, person])
    // Who had the seat gets the one that its taker had.
    await expect.poll(seats).toEqual([
      [1, ben.id],
      [2, anna.id],
    ])
    await hers.reload()
    await nextOf(hers).getByText('Red, position 2').waitFor()
    await his.goto(`${server.url}/stands/`)
    await nextOf(his).getByText('Red, position 1').waitFor()
    // Between two matches one tap on a neighbour's seat is enough.
    await hers.getByText('Take over a neighbour’s seat in Qualification 24').click()
    await hers.getByRole('button', { name: /^Red, position 1 · 90017\s*Ben watches$/ }).click()
    await hers.getByRole('button', { name: 'Start of the match' }).waitFor()
    await expect.poll(seats).toEqual([
      [1, anna.id],
      [2, ben.id],
    ])
    // A seat is taken for oneself only.
    const other = { match, seat: { alliance: 'red', position: 1 }, person: anna.id }
    expect((await ben.send('POST', `/api/events/${event}/seat`, other)).status).toBe(403)
  })
})
