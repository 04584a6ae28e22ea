import { once } from 'node:events'
import { createServer, request } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { Page } from '@playwright/test'
import { seededEvent } from '../../seed/event/index.ts'
import type { EventPack } from '../../src/api/pack/contracts.ts'
import { thinned } from '../../src/api/pack/thinned.ts'
import { packRating, ratedTeam } from '../../src/model/picks/index.ts'
import { openWorld } from '../browser/world.ts'
import { game, level, storedEstimates } from './picksEvent.ts'

const { event } = seededEvent()
const mark = '0'.repeat(64)
const madeAt = '2026-11-27T12:00:00.000Z'

/** An event of 60 teams as a browser keeps it; in the demo event's place, so that the server knows it. */
function packedEvent() {
  const { estimates, names } = storedEstimates()
  const teams = names.map((team) => ratedTeam(estimates, { team, robot: 100 }))
  const all = <Of>(of: (team: (typeof teams)[number]) => Of) =>
    Object.fromEntries(teams.map((each) => [each.team, of(each)]))
  const pack: EventPack = {
    ...{ game, revision: 1, own: [names[3] as string], matches: [], results: [], records: 480 },
    event: { ...event, level, teams: names.map((team) => ({ team })), own: names[3] as string },
    ranking: {
      criteria: [],
      per: 'match',
      rows: names.map((team, k) => ({ rank: k + 1, team, played: 8, values: [] })),
    },
    robots: all(({ option }) => thinned(option)),
    seen: all(() => 8),
    ...{ calls: [], plans: [], endings: [], from: mark, mark, madeAt, behind: null },
  }
  return { pack, ratings: all(({ rating }) => packRating(rating)) }
}

/** What stands between browser and server: it answers for the kept event, keeps what is called out from the server, and hands on all else. */
async function between(server: string): Promise<{ url: string; close(): void }> {
  const { pack, ratings } = packedEvent()
  const known = new Map([
    ['pack', { first: pack, later: { same: true, mark, madeAt } }],
    ['ratings', { first: { mark, ratings }, later: { mark, ratings: null } }],
  ])
  const door = createServer((asked, answer) => {
    const address = new URL(asked.url ?? '/', server)
    const of = known.get(/^\/api\/events\/[^/]+\/(\w+)$/.exec(address.pathname)?.[1] ?? '')
    if (of) {
      answer.setHeader('content-type', 'application/json')
      answer.end(JSON.stringify(address.searchParams.has('since') ? of.later : of.first))
    } else if (address.pathname.startsWith('/trpc/picks.write')) answer.destroy()
    else {
      const on = request(
        address,
        { method: asked.method, headers: { ...asked.headers, host: address.host } },
        (said) => {
          answer.writeHead(said.statusCode ?? 502, said.headers)
          said.pipe(answer)
        },
      )
      on.on('error', () => answer.destroy())
      asked.pipe(on)
    }
  })
  door.listen(0, '127.0.0.1')
  await once(door, 'listening')
  const close = () => {
    door.closeAllConnections()
    door.close()
  }
  return { url: `http://127.0.0.1:${(door.address() as AddressInfo).port}`, close }
}

/** When the newest order was painted, by the page's own clock that begins with its address (ms); so many are waited for. */
const painted = (page: Page, count: number, order: 'rough-order' | 'pick-order' = 'pick-order'): Promise<number> =>
  page
    .waitForFunction(
      ([name, many]) => {
        const all = performance.getEntriesByName(name)
        const last = all.at(-1)
        return all.length >= many && last ? last.startTime + last.duration : null
      },
      [`drawn:${order}`, count] as const,
      { timeout: 120_000 },
    )
    .then((value) => value.jsonValue() as Promise<number>)

/** A browser that keeps the event, as on an event's third day: everything was here before. */
export async function picksWorld() {
  const world = await openWorld()
  const door = await between(world.url)
  const context = await world.browser.newContext({ viewport: { width: 1280, height: 900 } })
  const address = `${door.url}/event/${event.id}/picks`
  const opened = async (order: 'rough-order' | 'pick-order') => {
    const page = await context.newPage()
    await page.goto(address, { waitUntil: 'commit' })
    const at = await painted(page, 1, order)
    await page.close()
    return at
  }
  const close = async () => {
    await context.close()
    door.close()
    await world.close()
  }
  await opened('pick-order')
  return { context, address, opened, close }
}

/** Waits until the order is the newest and its frame has been painted, so that none is measured for the one before it. */
async function settled(page: Page): Promise<void> {
  await page.locator('[aria-labelledby=order][aria-busy=false]').waitFor()
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(resolve, 50)))),
  )
}

/** From a press on a name to the next order, a fresh name each time. */
export async function reordering() {
  const { context, address, close } = await picksWorld()
  const page = await context.newPage()
  await page.goto(address)
  await painted(page, 1)
  await page.getByText('Begin the selection').click()
  await page.getByRole('button', { name: 'Begin', exact: true }).click()
  await page.getByText(/invites, round 1$/).waitFor()
  const run = async () => {
    await settled(page)
    const [count, pressed] = await page.evaluate(() => {
      const before = performance.getEntriesByName('drawn:pick-order').length
      const at = performance.now()
      document.querySelector<HTMLButtonElement>('.picks-names button')!.click()
      return [before, at] as const
    })
    return (await painted(page, count + 1)) - pressed
  }
  return { run, close }
}
