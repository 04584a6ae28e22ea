import { readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import type { TimingRecord } from '../../src/model/documents/timing.ts'
import type { Robot } from '../../src/model/documents/types.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const path = (design: string, stage = 'hook-on') =>
  `/designs/${design}/stopwatch?what=${encodeURIComponent(`score/gantry/0/stage/${stage}`)}`
const phone = { viewport: { width: 390, height: 844 }, hasTouch: true }

const stored = async <T>(kind: string, id: string): Promise<T> =>
  (await fetch(`${world.url}/api/documents/${kind}/${id}`).then((response) => response.json())).body
const record = (design: string, stage = 'hook-on') =>
  stored<TimingRecord>('timing', `${design}.score.gantry.0.stage.${stage}`)
const hookOn = async (design: string) => {
  const { robot } = await stored<{ robot: Robot }>('design', design)
  const [entry] = robot.score['gantry']!
  return 'stages' in entry! ? entry.stages.find(({ id }) => id === 'hook-on')!.duration : null
}

const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true })
const rows = (page: Page) => page.getByTestId('trial')

async function byHand(page: Page, ...times: string[]) {
  for (const time of times) {
    await page.getByLabel('Time', { exact: true }).fill(time)
    await page.keyboard.press('Enter')
  }
}

test('on a phone: times are tapped, a stop is taken back, one is struck with a reason, and the rest becomes the stage’s time', async () => {
  const page = await world.open(path('shearwater'), phone)
  await press(page, 'Start').tap()
  await page.waitForTimeout(700)
  await press(page, 'Next').tap()
  await page.waitForTimeout(500)
  await press(page, 'Stop').tap()
  await page.getByText(/^Time 2: 0\.[4-9]\d s$/).waitFor()
  await expect.poll(() => rows(page).count()).toBe(2)
  // The last press is taken back more than five seconds later: the watch runs on from where it was.
  await page.waitForTimeout(5200)
  await press(page, 'Undo the stop').tap()
  await expect.poll(() => rows(page).count()).toBe(1)
  await press(page, 'Stop').tap()
  const second = Number(
    (await rows(page).first().locator('.trial-time').textContent())!.split('\u00a0')[0]!.split(' ')[0],
  )
  expect(second).toBeGreaterThan(5.5)

  await page.getByText('2 times count; at least 3 are needed.').waitFor()
  await byHand(page, '0.9', 'soon')
  await page.getByText('‘soon’ is not a number').waitFor()
  await byHand(page, '1,3', '1.1', '1')
  // 5.5 s among 0.7, 0.9, 1.3, 1.1 and 1 is pointed out, and counts all the same.
  await page.getByText(/lies far off: usual here is/).waitFor()
  await page.getByText(/^6 times count/).waitFor()
  await page.getByRole('button', { name: /^Strike out time 2/ }).click()
  await page.getByLabel('Why it does not count').selectOption({ label: 'another reason' })
  await page.getByRole('button', { name: 'Strike it out' }).click()
  await page.getByText('Please say why').waitFor()
  await page.getByLabel('The reason').fill('The buoy fell')
  await page.getByRole('button', { name: 'Strike it out' }).click()
  await page.getByText('Struck: The buoy fell').waitFor()
  await expect.poll(() => page.getByText(/lies far off/).count()).toBe(0)
  await page.getByRole('button', { name: /^Let time 2/ }).click()
  await page.getByText(/^6 times count/).waitFor()
  await page.getByRole('button', { name: /^Strike out time 2/ }).click()
  await page.getByRole('button', { name: 'Strike it out' }).click()
  const counted = page.getByText(/^5 times count: [\d.]+\ss on average.* 1 struck\./)
  await counted.waitFor()

  await page.getByText('All times are on the server.').waitFor()
  const kept = (await record('shearwater')).trials
  // The first was taken by the real clock, which a busy machine lets run on.
  const times = kept.filter(({ struck }) => struck === null).map(({ seconds }) => seconds)
  const average = times.reduce((sum, seconds) => sum + seconds, 0) / times.length
  const said = Number(/count: ([\d.]+)/.exec((await counted.textContent())!)![1])
  expect(Math.abs(said - average)).toBeLessThanOrEqual(0.05 + 1e-9)
  expect(kept.map(({ struck }) => struck)).toEqual([null, 'The press came late', null, null, null, null])
  await page.getByText(/^With these times: [\d.]+ → [\d.]+ expected points a match/).waitFor()
  await page.getByRole('button', { name: 'Use these 5 times in the design' }).click()
  await page.getByText('Saved in the design as revision 2.').waitFor()
  expect(await hookOn('shearwater')).toEqual({
    kind: 'samples',
    seconds: kept.filter(({ struck }) => struck === null).map(({ seconds }) => seconds),
  })
  await page.getByText('The design uses these times.').waitFor()
  await page.context().close()
})

test.runIf(inLongForm)(
  'without connection times are taken and kept over a reload of the phone, and reach the server by themselves',
  async () => {
    const page = await world.open(path('kittiwake'), phone)
    await press(page, 'Start').waitFor()
    await page.route('**/trpc/**', (route) => route.abort())
    await press(page, 'Start').tap()
    await page.waitForTimeout(300)
    await press(page, 'Stop').tap()
    await byHand(page, '2', '2.5')
    await press(page, 'Start').tap()
    await page.getByText('3 changes are on this phone only.').waitFor()
    await page.getByText('The server does not answer. They stay on this phone').waitFor()
    world.errors.length = 0
    // The page comes again, the records of times do not: what is on the phone is shown.
    await page.unroute('**/trpc/**')
    await page.route('**/trpc/**', (route) =>
      /timing|documents\.save/.test(route.request().url() + (route.request().postData() ?? ''))
        ? route.abort()
        : route.continue(),
    )
    await page.reload()
    await page.getByText('3 changes are on this phone only.').waitFor()
    await expect.poll(() => rows(page).count()).toBe(3)
    // The watch that ran is found running, and its start can be taken back.
    await press(page, 'Stop').waitFor()
    await press(page, 'Undo the start').tap()
    await press(page, 'Start').waitFor()
    await page.unroute('**/trpc/**')
    world.errors.length = 0
    await page.getByText('All times are on the server.').waitFor()
    expect((await record('kittiwake')).trials).toHaveLength(3)
    await page.context().close()
  },
)

const keptFiles = (page: Page) =>
  page.evaluate(async () => {
    const all = (await caches.keys()).map(async (name) => (await caches.open(name)).keys())
    return (await Promise.all(all)).flat().map(({ url }) => new URL(url).pathname)
  })

test('the page opens without a connection, times reach the server when it is back, and a new build takes over', async () => {
  const page = await world.open(path('shearwater', 'line-up'), { ...phone, serviceWorkers: 'allow' })
  const context = page.context()
  await page.getByText('This page opens without a connection, too').waitFor()
  await context.setOffline(true)
  await page.reload()
  await page.getByText('The design is shown as this browser had it on').waitFor()
  await press(page, 'Start').tap()
  await page.waitForTimeout(300)
  await press(page, 'Stop').tap()
  await byHand(page, '2', '2.5')
  await press(page, 'Start').tap()
  await page.getByText('3 changes are on this phone only.').waitFor()
  await page.reload()
  await page.getByText('3 changes are on this phone only.').waitFor()
  await expect.poll(() => rows(page).count()).toBe(3)
  // The watch that ran is found running, and its start can be taken back.
  await press(page, 'Stop').waitFor()
  await press(page, 'Undo the start').tap()
  await press(page, 'Start').waitFor()
  await context.setOffline(false)
  await page.getByText('All times are on the server.').waitFor()
  expect((await record('shearwater', 'line-up')).trials).toHaveLength(3)
  await page.getByText('The design is shown as this browser had it on').waitFor({ state: 'detached' })
  // Only the page and its files are kept, never an answer of the server; other pages are not handed out.
  const kept = await keptFiles(page)
  expect(kept).toContain('/index.html')
  expect(kept.filter((name) => !/^\/(assets\/|index\.html$)/.test(name))).toEqual([])
  await context.setOffline(true)
  const other = await context.newPage()
  expect(await other.goto(`${world.url}/designs`).catch(() => null)).toBeNull()
  await other.close()
  await context.setOffline(false)

  // The next build: seen at once with a connection, and without one as soon as its worker is there.
  const [html, worker] = ['index.html', 'sw.js'].map((name) => join(world.webRoot, name)) as [string, string]
  const [builtHtml, builtWorker] = await Promise.all([readFile(html, 'utf8'), readFile(worker, 'utf8')])
  const mark = /const mark = '(\w+)'/.exec(builtWorker)![1]!
  await writeFile(html, builtHtml.replace('<html lang="en">', '<html lang="en" data-build="next">'))
  await writeFile(worker, builtWorker.replace(mark, 'next'))
  await page.reload()
  await expect.poll(() => page.locator('html').getAttribute('data-build')).toBe('next')
  const taken = () =>
    page.evaluate(async () => {
      const found = await navigator.serviceWorker.getRegistration()
      const kept = await caches.match('/index.html', { cacheName: 'cyclewright/next' })
      return kept !== undefined && !found?.installing && !found?.waiting && found?.active?.state === 'activated'
    })
  await expect.poll(taken, { timeout: 20_000 }).toBe(true)
  await context.setOffline(true)
  await page.reload()
  await page.getByText('All times are on the server.').waitFor()
  await expect.poll(() => page.locator('html').getAttribute('data-build')).toBe('next')
  await Promise.all([writeFile(html, builtHtml), writeFile(worker, builtWorker)])
  world.errors.length = 0
  await context.close()
})

test.runIf(inLongForm)('a drive between two spots is timed and stands beside the computed one', async () => {
  const page = await world.open(path('shearwater'), phone)
  await page.getByLabel('What is timed').selectOption({ label: 'The drive alone' }, { force: true })
  const from = page.getByLabel('The drive begins at')
  await from.selectOption({ index: 3 })
  const [start, end] = [await from.inputValue(), await page.getByLabel('and ends at').inputValue()]
  const [game, design] = await Promise.all([
    stored<object>('game', 'breakwater'),
    stored<{ robot: Robot }>('design', 'shearwater'),
  ])
  const way = await fetch(`${world.url}/api/compute/travel`, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify({ game, robot: design.robot, from: start, to: end }),
  }).then((answer) => answer.json())
  const drive = page.getByTestId('drive')
  await drive.getByText(`${way.seconds.toFixed(1)}\u00a0s from rest to rest`).waitFor()
  await byHand(page, '8', '9', '10')
  await drive.getByText(`and ${Number((9 / way.seconds).toFixed(2))} times the ideal line`).waitFor()
  await drive
    .getByText(/^3 drives measured: 9\.0\ss on average, 8\.0\ss to 10\.0\ss\. That is [\d.]+\ss longer/)
    .waitFor()
  await expect.poll(() => page.getByRole('button', { name: /^Use these/ }).count()).toBe(0)
  await page.getByText('All times are on the server.').waitFor()
  await page.reload()
  await drive.getByText(/^3 drives measured/).waitFor()
  await expect.poll(() => from.inputValue()).toBe(start)
  await page.context().close()
})

test.runIf(inLongForm)('two phones time one stage, and no time is lost', async () => {
  const [first, second] = [
    await world.open(path('kittiwake', 'line-up'), phone),
    await world.open(path('kittiwake', 'line-up'), phone),
  ]
  for (const page of [first, second]) await press(page, 'Start').waitFor()
  await byHand(first, '1.1', '1.2')
  await first.getByText('All times are on the server.').waitFor()
  await byHand(second, '1.3')
  await second.getByText('All times are on the server.').waitFor()
  expect((await record('kittiwake', 'line-up')).trials.map(({ seconds }) => seconds).sort()).toEqual([1.1, 1.2, 1.3])
  await expect.poll(() => rows(second).count()).toBe(3)
  await first.context().close()
  await second.context().close()
})

test.runIf(inLongForm)(
  'the design’s screen takes the times over as an edit that can be undone, and leads to the watch',
  async () => {
    const page = await world.open('/designs/kittiwake')
    await page.getByRole('button', { name: 'Score', exact: true }).click()
    await page.locator('g[data-stage="line-up"]').first().click()
    const form = page.getByTestId('stage-form')
    await form.getByText('3 times are taken, 1.2 s on average.').waitFor()
    await form.getByRole('button', { name: 'Use them' }).click()
    await form.getByText('They are in use.').waitFor()
    await expect.poll(() => form.getByLabel('Measured times, s').inputValue()).toBe('1.1 1.2 1.3')
    await page.getByRole('button', { name: 'Undo', exact: true }).click()
    await form.getByRole('button', { name: 'Use them' }).waitFor()
    await form.getByRole('link', { name: 'Time it with the stopwatch' }).click()
    await page.getByRole('heading', { name: 'Stopwatch', level: 1 }).waitFor()
    await expect.poll(() => rows(page).count()).toBe(3)
    await page.context().close()
  },
)

const looks = [
  ['dark', 360],
  ['light', 390],
] as const

test.each(inLongForm ? looks : looks.slice(0, 1))(
  'the %s theme has no finding of the scan, at %i px nothing is wider than the phone, and presses are large',
  async (colorScheme, width) => {
    const page = await world.open(path('puffin'), { colorScheme, viewport: { width, height: 740 } })
    await byHand(page, '1.2', '1.2', '1.3', '1.2', '9')
    await page
      .getByText(/lies far off/)
      .first()
      .waitFor()
    await page
      .getByRole('button', { name: /^Strike out time/ })
      .first()
      .click()
    expect(await findings(page)).toEqual([])
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBe(
      0,
    )
    for (const button of await page.locator('.press').all())
      expect((await button.boundingBox())!.height).toBeGreaterThanOrEqual(64)
    await page.getByText('A robot at speed does not see you').waitFor()
    await page.context().close()
  },
)

test('no page had an error', () => {
  expect(world.errors).toEqual([])
})
