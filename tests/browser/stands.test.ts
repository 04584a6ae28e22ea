import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Locator, Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Observation, Row } from '../../src/model/scouting/types.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const phone = { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true, locale: 'en-GB' }

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' })
const link = (page: Page, name: string | RegExp) => page.getByRole('link', { name })
const choice = (page: Page, group: string | RegExp, name: string) =>
  page.getByRole('group', { name: group }).getByRole('radio', { name, exact: true })

/** The stands on a phone on which nobody has to sign in, under a nickname. */
async function openStands(nickname: string, options = {}): Promise<Page> {
  const page = await world.open('/stands/', { ...phone, ...options })
  await page.getByLabel('What are you called?').fill(nickname)
  await press(page, 'Go on').tap()
  await link(page, 'Another match or robot').waitFor()
  return page
}

/** From the choice of a robot to its form before the match. */
async function chooseRobot(page: Page, seat: RegExp) {
  await link(page, 'Another match or robot').tap()
  await press(page, seat).tap()
  await press(page, 'Go on').tap()
}

async function records(scout: string): Promise<Row[]> {
  const events = await fetch(`${world.url}/api/stands`).then((answer) => answer.json())
  const found = await fetch(`${world.url}/api/records?event=${events[0].id}`).then((answer) => answer.json())
  return found.records.map(({ row }: { row: Row }) => row).filter((row: Row) => row.scout === scout)
}

const box = async (target: Locator) => (await target.boundingBox())!

const status = (page: Page, phone: number, server: number) =>
  link(page, `${phone} on this phone, 0 need you, ${server} on the server`).waitFor()

test('a whole match is recorded with one thumb, through a page that was closed between two taps', async () => {
  const first = await openStands('Mia')
  await chooseRobot(first, /^Blue, position 2/)
  await choice(first, /Where does it start/, '2 Middle quay').check({ force: true })
  const spied = () =>
    first.evaluate(() => {
      const { locks, buzzes } = window as unknown as { locks: string[]; buzzes: unknown[] }
      return { locks, buzzes }
    })
  await first.evaluate(() => {
    const spies = Object.assign(window, { locks: [] as string[], buzzes: [] as unknown[] })
    const request = async () => {
      spies.locks.push('held')
      return { release: async () => spies.locks.push('let go') }
    }
    Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request } })
    Object.defineProperty(navigator, 'vibrate', { value: (of: unknown) => spies.buzzes.push(of) })
  })
  await press(first, 'Start of the match').tap()
  await expect.poll(spied).toEqual({ locks: ['held'], buzzes: [] })

  // What is pressed most is large, apart, and within the thumb's reach.
  expect((await box(press(first, 'To the check'))).y).toBeLessThan(0.4 * phone.viewport.height)
  const primary = [/^Collected: /, /^Scored: /, /^Missed: /, /^About so many/, /^Nothing to undo/]
  for (const name of primary)
    for (const target of await press(first, name).all()) {
      const { y, height } = await box(target)
      expect(height).toBeGreaterThanOrEqual(64)
      expect(y).toBeGreaterThanOrEqual(0.4 * phone.viewport.height)
      expect(y + height).toBeLessThanOrEqual(phone.viewport.height)
    }
  const [outer, channel] = [await box(press(first, /^Collected: Outer/)), await box(press(first, /^Collected: Chan/))]
  expect(channel.x - (outer.x + outer.width)).toBeGreaterThanOrEqual(8)
  const [piers, gantry] = [await box(press(first, 'Scored: Piers')), await box(press(first, 'Scored: Gantry'))]
  expect(gantry.y - (piers.y + piers.height)).toBeGreaterThanOrEqual(8)
  // What counts reaches the edge of the screen.
  expect(piers.x + piers.width).toBe(phone.viewport.width)

  let taps = 0
  const tap = async (page: Page, name: string | RegExp) => {
    taps++
    await press(page, name).tap()
  }
  await tap(first, 'Collected: Outer slipway')
  await tap(first, 'Scored: Piers')
  await tap(first, 'Missed: Gantry')
  // At once and without a word: what was tapped is on the phone.
  const context = first.context()
  await first.getByText(/^Missed: Gantry at/).waitFor()
  expect((await spied()).buzzes).toHaveLength(3)
  // On a low screen the way back and what was tapped last stay in sight.
  await first.setViewportSize({ width: 360, height: 600 })
  for (const target of [press(first, /^Undo: Missed: Gantry/), first.getByText(/^Missed: Gantry at/)]) {
    const { y, height } = await box(target)
    expect(y + height).toBeLessThanOrEqual(600)
  }
  await first.setViewportSize(phone.viewport)
  // The screen may go dark again as soon as the match is left.
  await link(first, 'Back').tap()
  await expect.poll(async () => (await spied()).locks).toEqual(['held', 'let go'])
  await first.close()
  const page = await context.newPage()
  await page.goto(`${world.url}/stands/`)
  await link(page, /^Go on with Qualification \d+: Blue, position 2, Team \d+ \(3 taps\)$/).tap()
  await page.getByText(/^Missed: Gantry at/).waitFor()

  expect(await findings(page)).toEqual([])
  await tap(page, 'I looked away')
  await tap(page, 'Looking again')
  await tap(page, 'Scored: Lightship')
  await tap(page, /^Undo: Scored: Lightship/)
  await page.getByText('Taken back: Scored: Lightship').waitFor()
  await tap(page, 'About so many: Gantry')
  await page.getByRole('slider').fill('12')
  await tap(page, 'Scored about 12')
  await tap(page, 'Leaves for its finish')
  // One tap for each thing that happened, one more for the volley and for what was taken back.
  expect(taps).toBe(7 + 1 + 2)

  await press(page, 'To the check').tap()
  await page.getByText('1 Piers, about 12 Gantry, 1 missed. Right?').waitFor()
  await choice(page, 'Finish tried', 'Davit').check({ force: true })
  await page.getByText('1 Piers, about 12 Gantry, 1 missed, Davit. Right?').waitFor()
  await press(page, 'Right: keep it').tap()
  await status(page, 0, 1)
  // Back on the network, the page says what the record changed about its robot.
  await page.getByText(/^Team \d+: \d+\.\d → \d+\.\d pieces a match; from \d+ match(es)? now$/).waitFor()

  const [row] = await records('Mia')
  const body = row!.body as Observation
  expect(body).toMatchObject({
    subject: 'robot',
    origin: 'live',
    identifiedBy: 'position',
    startSpot: 'quay-middle',
    finish: { attempted: 'davit', achieved: 'davit' },
  })
  expect(row!.seat).toEqual({ alliance: 'blue', position: 2 })
  expect(body.timeline!.map(({ elapsed: _, ...what }) => what)).toEqual([
    { what: 'collected', source: 'outer' },
    { what: 'scored', goal: 'piers' },
    { what: 'missed', goal: 'gantry' },
    { what: 'unseen' },
    { what: 'seen' },
    { what: 'scored', goal: 'gantry', n: 12, counted: 'estimate' },
    { what: 'left' },
  ])

  // A correction is a further record that names the first and says why.
  await link(page, '0 on this phone').tap()
  await page.getByText(/^The server holds 1 of 1/).waitFor()
  expect(await findings(page)).toEqual([])
  await press(page, /^Correct: /).tap()
  await press(page, 'Right: keep it').tap()
  await page.getByText('Please say in a few words why it is corrected.').waitFor()
  await page.getByLabel('Why it is corrected').fill('It fell off the davit')
  await choice(page, 'Finish reached', 'none').check({ force: true })
  await press(page, 'Right: keep it').tap()
  await status(page, 0, 2)
  const [, corrected] = await records('Mia')
  expect(corrected).toMatchObject({
    reason: 'It fell off the davit',
    sequence: 2,
    body: { replaces: row!.id, finish: { attempted: 'davit', achieved: null } },
  })
  await context.close()
})

test('the page opens, records and is renewed without a connection, and the outbox comes through', async () => {
  const page = await openStands('Ada', { serviceWorkers: 'allow' })
  const context = page.context()
  await page.getByText('This page opens without a connection, too.').waitFor()
  await context.setOffline(true)
  await page.close()
  const cold = await context.newPage()
  await cold.goto(`${world.url}/stands/`)
  await chooseRobot(cold, /^Red, position 1/)
  await press(cold, 'It does not come').tap()
  await cold.getByText('It did not come.').waitFor()
  await press(cold, 'Right: keep it').tap()
  await status(cold, 1, 0)
  await link(cold, '1 on this phone').tap()
  await cold.getByText(/^The server does not answer. Next try in \d+ s\.$/).waitFor()
  expect(await records('Ada')).toEqual([])

  // The next build arrives while the outbox is full and the server of records is still out of reach.
  const [html, worker] = ['stands.html', 'stands-sw.js'].map((name) => join(world.webRoot, name)) as [string, string]
  const [builtHtml, builtWorker] = await Promise.all([readFile(html, 'utf8'), readFile(worker, 'utf8')])
  await writeFile(html, builtHtml.replace('<html lang="en">', '<html lang="en" data-build="next">'))
  await writeFile(worker, builtWorker.replace(/const mark = '\w+'/, "const mark = 'next'"))
  await context.route('**/api/records', (route) => route.fulfill({ status: 200, body: '<html>Please sign in</html>' }))
  await context.setOffline(false)
  await cold.reload()
  await expect.poll(() => cold.locator('html').getAttribute('data-build')).toBe('next')
  await status(cold, 1, 0)
  await context.unroute('**/api/records')
  await press(cold, 'Send now').tap()
  await status(cold, 0, 1)
  expect((await records('Ada')).map(({ body }) => body)).toMatchObject([{ absent: true }])
  // Only the page and its files are kept, never an answer of the server.
  const kept = await cold.evaluate(async () => {
    const names = (await caches.keys()).filter((name) => name.startsWith('cyclewright-stands/'))
    const caught = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()))
    return caught.flat().map(({ url }) => new URL(url).pathname)
  })
  expect(kept).toContain('/stands.html')
  expect(kept.filter((name) => !/^\/(assets\/|stands\.html$)/.test(name))).toEqual([])
  await Promise.all([writeFile(html, builtHtml), writeFile(worker, builtWorker)])

  // A lead rehearses: the phone passes with a record that was made while the server could not be reached.
  const { event } = (await records('Ada'))[0]!
  const json = { 'content-type': 'application/json' }
  await fetch(`${world.url}/api/events/${event}/drills`, { method: 'POST', headers: json, body: '{}' })
  await cold.goto(`${world.url}/stands/#/`)
  await cold.reload()
  await press(cold, 'Make the rehearsal record').tap()
  await cold.getByText('The server still answers.').waitFor()
  await context.setOffline(true)
  await press(cold, 'Make the rehearsal record').tap()
  await cold.getByText('The record is on this phone.').waitFor()
  await context.setOffline(false)
  await cold.getByText('This phone has passed').waitFor()
  expect((await records('Ada')).map(({ kind }) => kind)).toEqual(['observation', 'drill'])
  world.errors.length = 0
  await context.close()
})

test.runIf(inLongForm)(
  'who only counts keeps the screen on, and what is no number of seconds is not dropped',
  async () => {
    const page = await openStands('Lia')
    await link(page, 'Another match or robot').tap()
    await choice(page, 'How', 'only count').check({ force: true })
    await press(page, 'Go on').tap()
    await page.evaluate(() => {
      const spies = Object.assign(window, { locks: [] as string[] })
      const request = async () => {
        spies.locks.push('held')
        return { release: async () => spies.locks.push('let go') }
      }
      Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request } })
    })
    const locks = () => page.evaluate(() => (window as unknown as { locks: string[] }).locks)
    await press(page, 'Count').tap()
    await press(page, 'Scored: Piers').tap()
    expect(await locks()).toEqual(['held'])
    await press(page, 'To the check').tap()
    await expect.poll(locks).toEqual(['held', 'let go'])
    await page.getByLabel('Seconds lost').fill('a few')
    await press(page, 'Right: keep it').tap()
    await page.getByText('‘a few’ is not a number of seconds from 0 to 1200.').waitFor()
    expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-invalid'))).toBe('true')
    await page.getByLabel('Seconds lost').fill('12,5')
    await press(page, 'Right: keep it').tap()
    await status(page, 0, 1)
    expect((await records('Lia')).map(({ body }) => body)).toMatchObject([{ lostSeconds: 12.5 }])
    await page.context().close()
  },
)
