import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ownTeam, seededEvent } from '../../seed/event/index.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { readPdf } from './pdf.ts'
import { cutTexts, settled, wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

const { event, records } = seededEvent()
const address = `/event/${event.id}/briefing`
let world: World

beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const copyOf = (page: Page, name: string) => page.getByRole('article', { name, exact: true })

async function briefed(page: Page): Promise<void> {
  // The server works all robots out for the first one.
  await copyOf(page, 'Coach').waitFor({ timeout: 150_000 })
  await page.getByRole('button', { name: 'Agree on this plan' }).waitFor()
}

/** Letters in points, of every text that is seen in the copy. */
const sizesIn = (page: Page) =>
  page.locator('.brief-page > :not(footer)').evaluateAll((parts) =>
    parts
      .flatMap((part) => [part, ...part.querySelectorAll('p, li, h3, strong')])
      .filter((each) => !each.closest('figure') && each.textContent?.trim())
      .map((each) => (Number.parseFloat(getComputedStyle(each).fontSize) * 3) / 4),
  )

/** One page, black on white, nothing below 9 points. */
async function paper(page: Page, format: 'A4' | 'Letter'): Promise<void> {
  const pages = await readPdf(await page.pdf({ format }))
  expect(pages.length, format).toBe(1)
  const [sheet] = pages
  const small = sheet!.words.filter(({ size }) => size < 8.99)
  expect(small.map(({ text, size }) => `${text} ${size}`)).toEqual([])
  const greys = new Set([...sheet!.inks, ...sheet!.shapes].map(({ colour }) => colour))
  for (const colour of greys) {
    const [red, green, blue] = [1, 3, 5].map((at) => colour.slice(at, at + 2))
    expect([green, blue], colour).toEqual([red, red])
  }
}

test('The next match is briefed when its page opens: who does what, when to go, whom to watch; what is agreed is kept', async () => {
  const page = await world.open(address)
  await briefed(page)
  const coach = copyOf(page, 'Coach')
  expect(await page.getByLabel('Match', { exact: true }).locator('option:checked').innerText()).toMatch(/\(ours\)$/)
  expect(await coach.getByRole('listitem').filter({ hasText: ownTeam }).innerText()).toMatch(/Bring to .+/)
  expect(await coach.innerText()).toMatch(/Go at 0:\d\d for|play on to the end/)
  expect(await coach.getByRole('heading', { name: /^Watch 900\d\d: most to .+/ }).count()).toBe(1)
  // What is to be known within ten seconds stands out, in no more words than are read then: 238 a minute, silently and in English
  // (Brysbaert, How many words do we read per minute? Journal of Memory and Language 109, 2019: non-fiction, adults, on average).
  const standingOut = await coach.locator('.brief-job h3, .brief-sheet strong, .brief-threat h3').allInnerTexts()
  expect(standingOut.join(' ').match(/[\w:]+/g)!.length).toBeLessThanOrEqual((238 * 10) / 60)
  // Read at arm's length, and no probabilities.
  expect(Math.min(...(await sizesIn(page)))).toBeGreaterThanOrEqual(14)
  expect(await coach.innerText()).not.toContain('%')
  await paper(page, 'A4')

  // A partner's copy has the plan, and nothing that rates.
  await page.getByRole('button', { name: 'Partner' }).click()
  const partner = await copyOf(page, 'Partner').innerText()
  expect(partner).not.toMatch(/%|costs|points|±/)
  await page.getByRole('button', { name: 'Strategist' }).click()
  await copyOf(page, 'Strategist')
    .getByText(/^Chance to win \d\d.%$/)
    .waitFor()

  await page.getByLabel('Note').fill('90008 goes first at the gantry')
  await page.getByRole('button', { name: 'Agree on this plan' }).click()
  await page.getByText(/Note: 90008 goes first at the gantry$/).waitFor()
  // The pit crew's page, from what this browser has by now.
  await page.getByRole('link', { name: 'Pit board' }).click()
  const next = page.getByRole('region', { name: 'Next match' })
  await next.getByText(/^Queue at \d\d:\d\d$/).waitFor()
  expect(await next.innerText()).toMatch(/Bumpers: (Red|Blue) · Position [123]/)
  await page.context().close()
})

describe.runIf(inLongForm)('in the long form', () => {
  test('every copy is one page, on A4 and on Letter', async () => {
    const page = await world.open(address)
    await briefed(page)
    for (const copy of ['Coach', 'Partner', 'Strategist']) {
      await page.getByRole('button', { name: copy, exact: true }).click()
      for (const format of ['A4', 'Letter'] as const) await paper(page, format)
      expect(await findings(page)).toEqual([])
    }
    await page.setViewportSize({ width: 360, height: 800 })
    // Tables turn into lists, and pictures are drawn anew, once they have been measured.
    await settled(page, 'main h1')
    expect(await wider(page)).toBe(0)
    expect(await cutTexts(page)).toEqual([])
    await page.goto(`${world.url}/event/${event.id}/pit`)
    await page.getByRole('region', { name: 'Next match' }).waitFor()
    expect(await findings(page)).toEqual([])
    expect(await wider(page)).toBe(0)
    await page.context().close()
  })

  test('what arrives while somebody reads is told beside it and taken by a press; without the server this browser briefs', async () => {
    const page = await world.open(address)
    await briefed(page)
    const before = await copyOf(page, 'Coach').innerText()
    const row = records.find((each) => each.kind === 'observation' && each.body.team === ownTeam && each.body.match)!
    const id = '0195b2a0-0000-7000-8000-0000000b41ef'
    const timeline = Array.from({ length: 30 }, (_, n) => ({ elapsed: 20 + 4 * n, what: 'scored', goal: 'piers' }))
    const body = { ...(row.body as object), id, device: 'phone-new', sequence: 1, scout: 'Nils', timeline }
    const fresh = { ...row, id, device: 'phone-new', sequence: 1, scout: 'Nils', body }
    await fetch(`${world.url}/api/records`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ device: 'phone-new', unsent: 0, rows: [fresh] }),
    })
    const take = page.getByRole('button', { name: 'Take the new one' })
    await page
      .getByText('One record has arrived since this was made. Looking what it changes …')
      .waitFor({ timeout: 60_000 })
    expect(await copyOf(page, 'Coach').innerText()).toBe(before)
    // Whoever opens the page meanwhile reads the same at once, and is told so.
    const late = await world.open(address)
    await copyOf(late, 'Coach').waitFor()
    // A record in, all robots are worked out anew, and the briefing from them.
    await take.waitFor({ timeout: 150_000 })
    expect(await copyOf(page, 'Coach').innerText()).toBe(before)
    await late.getByRole('button', { name: 'Take the new one' }).waitFor({ timeout: 150_000 })
    expect(await copyOf(late, 'Coach').innerText()).toBe(before)
    await late.context().close()
    await take.click()
    await take.waitFor({ state: 'detached' })
    expect(await copyOf(page, 'Coach').innerText()).not.toBe(before)

    await page.context().setOffline(true)
    const others = page.getByLabel('Match', { exact: true })
    const values = await others
      .locator('option')
      .evaluateAll((all) => all.map((each) => (each as HTMLOptionElement).value))
    await others.selectOption(values.at(-1)!)
    await page
      .getByRole('article')
      .getByText(/Made by this browser\./)
      .waitFor({ timeout: 150_000 })
    await page.context().setOffline(false)
    await page.context().close()
  })

  test('A line-up of our own is tried, taken as the plan, read in every copy and agreed on; after the match its result stands beside it', async () => {
    const page = await world.open(address)
    await briefed(page)
    const match = await page.getByLabel('Match', { exact: true }).inputValue()
    await page.getByRole('button', { name: 'Strategist' }).click()
    await page.getByLabel(`${ownTeam} does`).selectOption('marks')
    await page.getByRole('button', { name: 'Play this line-up' }).click()
    await page.getByRole('button', { name: 'Take it as the plan: Own 1' }).click()
    await page.getByText('The copies below show a line-up of our own.').waitFor()
    const computed = page.getByRole('table', { name: 'Line-ups', exact: true }).getByRole('row', { name: /^computed/ })
    expect(await computed.innerText()).toMatch(/\d\d.%/)
    for (const copy of ['Coach', 'Partner', 'Strategist']) {
      await page.getByRole('button', { name: copy, exact: true }).click()
      for (const format of ['A4', 'Letter'] as const) await paper(page, format)
      expect(await findings(page)).toEqual([])
    }
    await page.getByRole('button', { name: 'Coach', exact: true }).click()
    const ours = copyOf(page, 'Coach').getByRole('listitem').filter({ hasText: ownTeam })
    expect(await ours.innerText()).toMatch(/Stand in the way of 900\d\d/)
    // Back to the computed one, and again: what was tried is still there.
    await page.getByRole('button', { name: 'Back to the computed one' }).first().click()
    await ours.getByText(/^Bring to/).waitFor()
    await page.getByRole('button', { name: 'Strategist' }).click()
    await page.getByRole('button', { name: 'Take it as the plan: Own 1' }).click()
    await page.getByText('The copies below show a line-up of our own.').waitFor()
    await page.getByLabel('Note').fill('Our arm is broken')
    await page.getByRole('button', { name: 'Agree on this plan' }).click()
    const agreed = page.getByRole('listitem').filter({ hasText: 'Note: Our arm is broken' })
    expect(await agreed.innerText()).toMatch(/A line-up of our own: \d+.% before calls, the computed one \d+.%/)

    const matches = `${world.url}/api/events/${event.id}/matches`
    const known = (await (await fetch(matches)).json()) as { matches: { match: { id: string }; revision: number }[] }
    const side = (total: number) => ({ points: { total }, bonuses: [] })
    const result = { match, red: side(71), blue: side(64) }
    const { revision } = known.matches.find((each) => each.match.id === match)!
    const sent = await fetch(`${world.url}/api/events/${event.id}/results`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ results: [{ match, base: 0, matchRevision: revision, result }] }),
    })
    expect(sent.ok).toBe(true)
    await page.goto(world.url + address)
    await briefed(page)
    expect(await page.getByLabel('Match', { exact: true }).inputValue()).not.toBe(match)
    expect(await agreed.innerText()).toMatch(/It came to (71 : 64|64 : 71); expected was .+Our arm is broken/)
    // And on paper: what was called then, and what it came to.
    expect(await copyOf(page, 'Coach').getByText('Last call: ').innerText()).toMatch(/71 : 64|64 : 71/)
    await page.context().close()
  })
})
