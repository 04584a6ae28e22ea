import { readFile } from 'node:fs/promises'
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest'
import { hashOf } from '../../src/api/records/rows.ts'
import { onlyWorkspace } from '../../src/app.ts'
import { canonicalJson } from '../../src/model/scouting/index.ts'
import { seedIfEmpty } from '../../src/seeding.ts'
import { startServer } from '../api/server.ts'
import { claim, join } from '../api/team.ts'
import { uuidOf } from '../faults/harbourEvent.ts'
import { modes as colourModes, findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { cutTexts, settled, wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const table = [
  'The first two hours, as of noon',
  'number,time,red_1,red_2,red_3,blue_1,blue_2,blue_3,surrogates',
  '1,09:00,90001,90002,90003,90004,90005,90006,',
  '2,09:10,90004,90001,90002,90003,90006,90005,90001',
  '3,9 o’clock,90001,90002,90003,90004,90005,90006,',
].join('\n')

test('a schedule is pasted, looked at, applied and undone; a result is entered and ranks the teams', async () => {
  const page = await world.open('/')
  await page.locator('.masthead nav').getByRole('link', { name: 'Event' }).click()
  await page.getByRole('link', { name: 'Breakwater Spring Meeting' }).waitFor()
  await page.getByLabel('Name', { exact: true }).fill('Harbour days')
  await page.getByLabel('First day').fill('2031-02-28')
  await page.getByRole('button', { name: 'Create it' }).click()
  await page.getByRole('heading', { name: 'Harbour days' }).waitFor()

  // What can not be read is told by line and column, and the rest can be looked at.
  await page.getByRole('textbox', { name: 'Table of matches' }).fill(table)
  await page.getByRole('button', { name: 'Read the table' }).click()
  await page.getByText('Line 5: ‘time’: ‘9 o’clock’ is not a time').waitFor()
  await page.getByRole('button', { name: 'See what 2 lines would change' }).click()
  const looked = page.getByRole('region', { name: 'Before it is applied' })
  await looked.getByText('Not among the teams of the event: 90001, 90002, 90003, 90004, 90005 and 90006.').waitFor()
  expect(await looked.getByRole('button', { name: 'Change 2 matches' }).isDisabled()).toBe(true)
  await looked.getByRole('button', { name: 'Add these 6 teams' }).click()
  await looked.getByText('2 matches are new, Qualification 1 to Qualification 2.').waitFor()
  await looked.getByRole('button', { name: 'Change 2 matches' }).click()
  await page.getByText('2 matches were changed.').waitFor()
  // What was pressed stood below: the answer and the way back are brought into sight.
  expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('2 matches were changed. Undo')
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByText('No matches yet').waitFor()
  await page.getByRole('button', { name: 'See what 2 lines would change' }).click()
  await looked.getByRole('button', { name: 'Change 2 matches' }).click()
  const rows = page.getByRole('region', { name: 'Schedule' }).getByRole('row')
  await expect.poll(() => rows.count()).toBe(3)
  expect(await rows.nth(2).textContent()).toContain('90001surrogate')

  // A robot is substituted: the change is shown before it is made.
  await page.getByRole('button', { name: 'Qualification 2' }).click()
  await page.getByRole('dialog').getByLabel('Blue, position 3', { exact: true }).selectOption('90004')
  // Who looks something up in between finds the form as it was left.
  await page.keyboard.press('Escape')
  await page.getByRole('link', { name: 'Teams' }).click()
  await page.getByRole('link', { name: 'Schedule' }).click()
  await page.getByRole('button', { name: 'Qualification 2' }).click()
  await page.getByText('What you typed before is still here.').waitFor()
  await page.getByRole('button', { name: 'See what this changes' }).click()
  await looked.getByText('Qualification 2: team 90004 plays twice in it.').waitFor()
  expect(await looked.getByText('Blue, position 3: 90004 in place of 90005.').count()).toBe(1)
  await looked.getByRole('button', { name: 'Leave it as it is' }).click()
  await page.getByRole('button', { name: 'Qualification 1', exact: true }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Play it again' }).click()
  await looked.getByText('Qualification 1 is voided: its result counts no more, its records stay.').waitFor()
  await looked.getByRole('button', { name: 'Leave it as it is' }).click()

  await page.getByRole('link', { name: 'Results' }).click()
  await page.getByRole('button', { name: 'Enter the result of Qualification 1' }).click()
  await page.getByLabel('Red: Total').fill('60')
  await page.getByLabel('Red: Harbour moored').check()
  await page.getByRole('button', { name: 'Save the result' }).click()
  await page.getByText('Please give the total.').waitFor()
  await page.getByLabel('Blue: Total').fill('45,5')
  await page.getByLabel('Blue, position 2, 90005').selectOption('disqualified')
  await page.getByRole('button', { name: 'Save the result' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  await page.getByText('Red: Harbour moored').waitFor()
  // The last entry is taken back, the robot's state with it, and put in again.
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByText('Red: Harbour moored').waitFor({ state: 'detached' })
  await page.getByRole('button', { name: 'Enter the result of Qualification 1' }).click()
  expect(await page.getByLabel('Blue, position 2, 90005').inputValue()).toBe('played')
  await page.getByLabel('Red: Total').fill('60')
  await page.getByLabel('Red: Harbour moored').check()
  await page.getByLabel('Blue: Total').fill('45,5')
  await page.getByLabel('Blue, position 2, 90005').selectOption('disqualified')
  await page.getByRole('button', { name: 'Save the result' }).click()
  await page.getByRole('dialog').waitFor({ state: 'detached' })
  await page.getByText('Red: Harbour moored').waitFor()

  await page.getByRole('link', { name: 'Ranking', exact: true }).click()
  const ranks = page.getByRole('region', { name: 'Ranking' }).getByRole('row')
  // Red: 3 for the win and 1 for the bonus.
  await expect.poll(() => ranks.count()).toBe(7)
  expect(await ranks.nth(1).textContent()).toMatch(/^19000[123].*drawn by lot.*4.*60/)
  expect(await ranks.nth(6).textContent()).toMatch(/^690005.*disqualified once/)
  await ranks.nth(6).getByRole('button').click()
  await page.getByRole('cell', { name: 'Blue, disqualified' }).waitFor()

  // What another program enters is there (the match was put in, taken out and put in again) without loading anything anew.
  const of = `${world.url}/api/events/${page.url().split('/').at(-2)}`
  const side = { points: { total: 40 }, bonuses: [] }
  const result = { match: 'qualification-2', red: side, blue: side }
  const entry = { match: result.match, base: 0, matchRevision: 3, result }
  const sent = await fetch(`${of}/results`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ results: [entry] }),
  })
  expect(await sent.json()).toMatchObject([{ revision: 1 }])
  await page.getByText('From 2 matches; 0 to come.').waitFor()

  await page.getByRole('link', { name: 'Who watches whom' }).click()
  await page.getByText('invite scouts first').waitFor()
  expect(world.errors).toEqual([])

  // The event as files. Under another name it comes in as another event; what is damaged does not.
  await page.getByRole('link', { name: 'Files' }).click()
  const saved = async (button: string) => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: button }).click(),
    ])
    return { name: download.suggestedFilename(), text: await readFile(await download.path(), 'utf8') }
  }
  const tables = await saved('Save the tables')
  expect([tables.name.endsWith('-tables.zip'), tables.text.slice(0, 2)]).toEqual([true, 'PK'])
  const archive = JSON.parse((await saved('Save the whole event')).text)
  const { contents } = archive
  for (const { body } of contents.event) Object.assign(body, { id: 'second', name: 'Second harbour days' })
  // Somebody of theirs visited a team, who is a member of nothing here.
  const who = { id: 'somebody-else', nickname: 'Kittiwake' }
  const at = '2026-11-27T10:00:00.000Z'
  const way = { id: uuidOf(9, 1), event: 'second', device: 'phone-9', sequence: 1, scout: who.id, made: at }
  const visit = { ...way, kind: 'visit', body: { team: '90001', at, claims: { cycle: 14 }, photos: [] } }
  const hash = hashOf(canonicalJson(visit))
  contents.records.push({ row: visit, hash, receivedAt: at, person: who.id, replaces: null })
  contents.people.push(who)
  const put = async (content: object) => {
    const buffer = Buffer.from(JSON.stringify(content))
    await page
      .getByLabel('File with an event')
      .setInputFiles({ name: 'event.json', mimeType: 'application/json', buffer })
  }
  await put(archive)
  await page.getByText('hash: The file is damaged').waitFor()
  expect(world.errors.splice(0)).toEqual([expect.stringContaining('400')])
  await put({ ...archive, hash: hashOf(canonicalJson(contents)) })
  await page.getByRole('heading', { name: 'What event.json would change in Second harbour days' }).waitFor()
  // Two are new, none is here.
  expect(await page.getByRole('row', { name: 'Matches' }).textContent()).toBe('Matches20')
  if (inLongForm) expect(await findings(page)).toEqual([])
  await page.getByRole('button', { name: 'Bring it in' }).click()
  await page.getByRole('link', { name: 'Open Second harbour days' }).click()
  await page.getByRole('heading', { name: 'Second harbour days', level: 1 }).waitFor()
  expect(await rows.count()).toBe(3)
  expect(world.errors).toEqual([])

  // Their visit shows the name that came with it, until a lead removes that.
  const ofVisit = page.getByText(/^claimed to /)
  await page.goto(`${world.url}/event/second/visits`)
  await ofVisit.waitFor()
  expect(await ofVisit.textContent()).toContain('claimed to Kittiwake, ')
  await page.goto(`${world.url}/people`)
  await page.getByRole('button', { name: 'Remove the name Kittiwake' }).click()
  await page.getByText('stays, by ‘somebody removed’').waitFor()
  await page.getByRole('button', { name: 'Remove it' }).click()
  await page.getByText('The name is removed.').waitFor()
  expect(await page.getByText('Kittiwake').count()).toBe(0)
  await page.goto(`${world.url}/event/second/visits`)
  await ofVisit.waitFor()
  expect(await ofVisit.textContent()).toContain('claimed to somebody removed, ')

  // What changes after a page was asked for and before it hears news is not missed.
  let letGo = () => {}
  const held = new Promise<void>((resolve) => {
    letGo = resolve
  })
  await page.route('**/second/live', async (route) => {
    await held
    await route.continue()
  })
  await page.goto(`${world.url}/event/second/ranking`)
  await page.getByText('From 2 matches; 0 to come.').waitFor()
  const back = await fetch(`${world.url}/api/events/second/results`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ results: [{ ...entry, base: 1, result: null }] }),
  })
  expect(back.status).toBe(200)
  letGo()
  await page.getByText(/^From (one|1) match/).waitFor()
  expect(world.errors).toEqual([])
})

const parts = ['', '/results', '/ranking', '/watch', '/teams', '/exchange']

describe.runIf(inLongForm)('the parts of an event', () => {
  test.each(['en-US', 'de-DE'])('fit 360 px, and no scan finds anything, in %s', async (locale) => {
    const page = await world.open('/event', { locale, viewport: { width: 360, height: 760 } })
    const found: string[] = []
    for (const part of parts) {
      await page.goto(`${world.url}/event/breakwater-spring${part}`)
      await settled(page, '.event-page h2')
      found.push(...(await findings(page)).map((finding) => `${part}: ${finding}`))
      found.push(...(await cutTexts(page)).map((text) => `${part}: cut: ${text}`))
      if ((await wider(page)) > 0) found.push(`${part}: wider than the window`)
    }
    expect(found).toEqual([])
    // The forms of one match stand in panels of their own.
    for (const [part, button] of [
      ['', 0],
      ['/results', 0],
    ] as const) {
      await page.goto(`${world.url}/event/breakwater-spring${part}`)
      await page.locator('.event-page tbody .opens').nth(button).click()
      await settled(page, 'dialog fieldset')
      found.push(...(await findings(page)), ...(await cutTexts(page)))
      await page.keyboard.press('Escape')
    }
    expect(found).toEqual([])
  })

  test('share the seats out among scouts, let a lead change one, save them and take them back', async () => {
    const server = await startServer({ webRoot: world.webRoot })
    onTestFinished(() => server.close())
    await seedIfEmpty(server.store, onlyWorkspace)
    const lead = await claim(server)
    for (let number = 1; number <= 9; number++) await join(server, lead, { role: 'scout', nickname: `Scout ${number}` })
    const context = await world.browser.newContext({ serviceWorkers: 'block', viewport: { width: 1280, height: 900 } })
    onTestFinished(() => context.close())
    const [name = '', value = ''] = lead.cookie.split('=')
    await context.addCookies([{ name, value, url: server.url }])
    const page = await context.newPage()
    await page.goto(`${server.url}/event/breakwater-spring/watch`)
    await page.getByLabel('Most matches without a break').fill('none')
    await page.getByText('A whole number from one to a hundred, please.').waitFor()
    await page.getByLabel('Most matches without a break').fill('6')
    await page.getByRole('button', { name: 'Share out' }).click()
    // 23 matches to come have 138 seats, of which each of nine scouts gets 15 or 16.
    await page.getByText('Everybody watches 15 to 16 matches.').waitFor()
    const seat = page.getByLabel('Qualification 24, Red, position 1: who watches')
    const before = await seat.inputValue()
    const other = await page.getByLabel('Qualification 24, Red, position 2: who watches').inputValue()
    await seat.selectOption(other)
    await page.getByText('twice').first().waitFor()
    await page.getByRole('button', { name: 'Save the assignments' }).click()
    await page.getByText('is to watch two robots').waitFor()
    await seat.selectOption(before)
    await page.getByRole('button', { name: 'Save the assignments' }).click()
    await page.getByText('The assignments are saved.').waitFor()
    const assigned = async () => (await lead.get('/api/events/breakwater-spring/assignments')).body.assignments
    expect((await assigned()).filter(({ person }: { person: string | null }) => person !== null)).toHaveLength(138)
    expect(await findings(page)).toEqual([])
    await page.getByRole('button', { name: 'Undo' }).click()
    await page.getByText('Nobody watches yet.').first().waitFor()
    expect((await assigned()).filter(({ person }: { person: string | null }) => person !== null)).toEqual([])
  })

  test.each([colourModes[1]!, colourModes[2]!])('have enough contrast in %j', async ({ media, only }) => {
    const page = await world.open('/event/breakwater-spring/ranking', {
      colorScheme: media.colorScheme,
      contrast: media.contrast,
    })
    await settled(page, '.event-page tbody tr')
    await page.locator('.event-page tbody .opens').first().click()
    expect(await findings(page, [...(only ?? [])])).toEqual([])
  })
})
