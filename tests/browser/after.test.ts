import { afterAll, beforeAll, expect, test } from 'vitest'
import { ownTeam } from '../../seed/event/index.ts'
import { seededEvent } from '../../seed/index.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { readPdf, squeezed } from './pdf.ts'
import { cutTexts, wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

const { event } = seededEvent()
const address = `/event/${event.id}`
let world: World

beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

test('after the event what went against us comes first, what we take from it stands on one slide, and others get neither', async () => {
  const page = await world.open(`${address}/after`)
  await page
    .getByText(/expected 59\.1 points a match; by what was seen it is \d\d\.\d\. Which of its assumptions/)
    .waitFor()
  await page.getByLabel('What we take from it').fill('Drive the outer slipway with the wind')
  await page.getByRole('button', { name: 'Save' }).click()
  await page.getByText('Saved.').waitFor()
  await page.getByRole('button', { name: 'One slide' }).click()
  const slide = page.getByRole('article', { name: 'One slide' })
  await slide.getByRole('heading', { name: 'Predicted' }).waitFor()
  await slide.getByText('Drive the outer slipway with the wind').waitFor()

  // One page across, nothing else on it, no text below 9 pt.
  for (const format of inLongForm ? (['A4', 'Letter'] as const) : (['A4'] as const)) {
    const pages = await readPdf(await page.pdf({ format, preferCSSPageSize: true }))
    expect(pages).toHaveLength(1)
    const [sheet] = pages as [(typeof pages)[number]]
    expect(sheet.width).toBeGreaterThan(sheet.height)
    for (const text of ['predicted', 'seen', 'changed', 'drivetheouterslipwaywiththewind', `team${ownTeam}`])
      expect(sheet.text).toContain(squeezed(text))
    expect(Math.min(...sheet.words.map(({ size }) => size))).toBeGreaterThan(8.95)
  }

  await page.getByRole('button', { name: 'For other teams' }).click()
  await page.getByRole('heading', { name: 'Ranking by official results' }).waitFor()
  expect(await page.getByText('Drive the outer slipway').count()).toBe(0)
  expect(await page.locator('article').textContent()).not.toMatch(/Tove|Ilka|Jonte/)

  await page.getByRole('link', { name: 'Final ranks' }).click()
  await page.getByText(new RegExp(`^Team ${ownTeam} ends at rank \\d+\\.\\d on average\\.$`)).waitFor()
  const all = page.getByRole('region', { name: 'All teams' })
  expect(await all.getByRole('row').count()).toBe(event.teams.length + 1)
  expect(await all.getByRole('row').nth(1).textContent()).toContain(ownTeam)
  expect(await page.getByText(/one percentage point more for ‘.+’ is worth \d+.% of a point/).count()).toBe(3)

  await page.getByRole('link', { name: 'Where to look next' }).click()
  const worth = page.getByRole('region', { name: 'What one look at each is worth' })
  await worth.getByRole('row').nth(3).waitFor()
  expect(await worth.getByRole('rowheader', { name: ownTeam }).count()).toBe(0)
  expect(world.errors).toEqual([])
  await page.context().close()
})

/** Teams as robots are worked out anew for these: seconds on a quiet machine. */
const slow = { timeout: 600_000 }

test.runIf(inLongForm)('they fit a phone, in German too, and the scan finds nothing', slow, async () => {
  const readiness = [
    ['after', '.after-questions li'],
    ['after?view=slide', '.after-slide li'],
    ['after?view=publish', 'article table tbody tr'],
    ['seeds', '.rank-bars'],
    ['look', '.look-bar'],
  ] as const
  for (const locale of ['en-US', 'de-DE'])
    for (const [path, ready] of readiness) {
      const page = await world.open(`${address}/${path}`, { locale, viewport: { width: 360, height: 780 } })
      await page.locator(ready).first().waitFor()
      expect([path, await wider(page), await cutTexts(page)]).toEqual([path, 0, []])
      expect(await findings(page)).toEqual([])
      await page.context().close()
    }
})

test.runIf(inLongForm)(
  'an earlier event is chosen, what it changes is seen first, and it is taken back',
  slow,
  async () => {
    const put = (path: string, body: unknown) =>
      fetch(`${world.url}${path}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      })
    const { records, matches } = seededEvent()
    const before = { ...event, id: 'trials', name: 'Trials' }
    await put('/api/documents/event/trials', { base: null, body: before })
    const { mark } = await (await fetch(`${world.url}/api/events/trials/matches`)).json()
    await put('/api/events/trials/matches', { matches: matches.slice(0, 4), mark })
    const known = new Set(matches.slice(0, 4).map(({ id }) => id))
    const rows = records.flatMap((row, k) => {
      if (row.kind !== 'observation' || row.body.match === null || !known.has(row.body.match)) return []
      const id = `0195b2a0-0000-7000-9000-${String(k).padStart(12, '0')}`
      const { replaces: _, ...body } = row.body
      const own = { id, device: 'phone-old', sequence: k + 1 }
      return [{ ...row, ...own, event: 'trials', body: { ...body, ...own } }]
    })
    await fetch(`${world.url}/api/records`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ device: 'phone-old', unsent: 0, rows }),
    })
    const page = await world.open(`${address}/estimates`)
    page.setDefaultTimeout(slow.timeout)
    await page.getByText('Does an earlier event count here?').click()
    await page.getByLabel('Event', { exact: true }).selectOption('trials')
    await page.getByLabel('A match there counts (%)').fill('140')
    await page.getByText('A whole number from 0 to 100 is needed, ‘140’ is none').waitFor()
    await page.getByLabel('A match there counts (%)').fill('50')
    await page.getByLabel('Teams whose robot was changed since').fill('90001, 12345')
    await page.getByText('Not of this event: 12345').waitFor()
    await page.getByLabel('Teams whose robot was changed since').fill('90001')
    await page.getByRole('button', { name: 'See what it changes' }).click()
    const table = page.getByRole('region', { name: 'What it changes: points of goals in teleop' })
    await table.getByRole('row').nth(2).waitFor()
    expect(await findings(page)).toEqual([])
    await page.getByRole('button', { name: 'Let it count' }).click()
    await page.getByText(/^Matches of ‘Trials’ count here by 50.%; they say something about \d+ teams\.$/).waitFor()
    await page.getByRole('button', { name: 'Take back' }).click()
    await page.getByText('Only matches of this event count now.').waitFor()
    await page.context().close()
  },
)

test.runIf(inLongForm)('looks are proposed for who is free, and taken over into who watches whom', slow, async () => {
  const { token } = await world.store.entrance.claimLink(await world.store.ensureWorkspace('default'), 1)
  const page = await world.open(`/claim#${token}`)
  page.setDefaultTimeout(slow.timeout)
  await page.getByLabel('Nickname').fill('Ada')
  await page.getByLabel('Passphrase', { exact: true }).fill('seven gulls above the quay')
  await page.getByRole('button', { name: 'Claim the server' }).click()
  await page.getByRole('heading', { name: 'People', level: 1 }).waitFor()
  await page.goto(`${world.url}${address}/look`)
  await page.getByRole('checkbox', { name: 'Ada' }).check()
  await page.getByLabel('Matches without a break, at most').fill('2')
  await page.getByRole('button', { name: 'Propose looks' }).click()
  const plan = page.getByRole('region', { name: 'Who looks where' })
  await plan.getByRole('row').nth(2).waitFor()
  const count = (await plan.getByRole('row').count()) - 1
  expect(await findings(page)).toEqual([])
  await page.getByRole('button', { name: 'Take over into who watches whom' }).click()
  await page.getByText(`${count} seats are assigned.`).waitFor()
  const seats = async () => {
    const found = (await page.evaluate(
      async (at) => (await (await fetch(at)).json()).assignments,
      `/api/events/${event.id}/assignments`,
    )) as { person: string | null }[]
    return found.filter(({ person }) => person !== null).length
  }
  expect(await seats()).toBe(count)
  await page.getByRole('button', { name: 'Take back' }).click()
  await expect.poll(seats).toBe(0)
  await page.context().close()
})
