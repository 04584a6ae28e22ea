import { afterAll, beforeAll, expect, test } from 'vitest'
import type { Observation, Row } from '../../src/model/scouting/index.ts'
import { seen } from '../faults/harbourEvent.ts'
import { findings } from './axe.ts'
import { withEvent } from './harbour.ts'
import { inLongForm } from './longForm.ts'
import { cutTexts, wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
  await withEvent(world)
})
afterAll(() => world.close())

const timeline: Observation['timeline'] = [
  { elapsed: 21.4, what: 'collected', source: 'outer' },
  { elapsed: 29.8, what: 'scored', goal: 'piers', x: 3.5, y: 2 },
  { elapsed: 30.9, what: 'scored', goal: 'piers' },
]
const finish = { attempted: 'davit', achieved: null }

function recorded(device: number, change: Partial<Observation>): Row {
  const row = seen(device, 1, { match: 'q12', team: '90001', timeline, finish, ...change })
  return { ...row, event: 'harbour', body: JSON.parse(JSON.stringify(row.body)) } as Row
}

async function send(...rows: Row[]): Promise<string[]> {
  const headers = { 'content-type': 'application/json' }
  const body = JSON.stringify({ device: 'laptop', unsent: 0, rows })
  const response = await fetch(`${world.url}/api/records`, { method: 'POST', headers, body })
  return ((await response.json()) as { answers: { outcome: string }[] }).answers.map(({ outcome }) => outcome)
}

interface InForce {
  row: Extract<Row, { kind: 'observation' }>
  team: string
  counts: boolean
}
const inForce = async (team: string): Promise<InForce[]> => {
  const response = await fetch(`${world.url}/api/events/harbour/observations?match=q12`)
  return ((await response.json()) as InForce[]).filter((each) => each.team === team)
}

test('a lead looks at records, lets one count alone, corrects one and takes it back, and decides over what was kept apart', async () => {
  const first = recorded(1, { scout: 'Anna' })
  const counted = recorded(2, {
    scout: 'Ben',
    timeline: undefined as never,
    counts: [{ goal: 'piers', period: 'teleop', scored: 9, missed: 1 }],
  })
  const twin = { ...first, body: { ...first.body, note: 'bent intake' } } as Row
  expect(await send(first, counted, twin)).toEqual(['held', 'held', 'quarantined'])
  const page = await world.open('/event/harbour/board')
  await page.getByRole('link', { name: 'One waits for a decision' }).waitFor()
  await page.getByText('scouts differ at Piers: one saw 2 pieces, another 9.').waitFor()

  // What comes in meanwhile is there without loading anything anew.
  const another = page.getByRole('button', { name: 'Qualification 12, Blue, position 1, team 90004' })
  expect(await another.count()).toBe(0)
  await send(recorded(3, { scout: 'Anna', team: '90004' }))
  await another.waitFor()

  await page.getByRole('button', { name: 'Qualification 12, Red, position 1, team 90001' }).click()
  const panel = page.getByRole('dialog', { name: 'Qualification 12, team 90001' })
  await panel.getByText('2 records of this robot, and all count.').waitFor()
  await panel.getByLabel('Why (may stay empty)').fill('Sat nearer')
  await panel.getByRole('button', { name: 'Let the record by Ben alone count' }).click()
  await panel.getByText('Only the record by Ben counts.').waitFor()
  await panel.getByText('Reason: Sat nearer').waitFor()
  expect((await inForce('90001')).map(({ counts }) => counts)).toEqual([false, true])
  await expect.poll(() => page.getByText('scouts differ').count()).toBe(0)
  expect(await findings(page)).toEqual([])
  await panel.getByRole('button', { name: 'Let all count again' }).click()
  await panel.getByText('2 records of this robot, and all count.').waitFor()

  await panel.getByRole('button', { name: 'Correct the record by Anna' }).click()
  await panel.getByText('Nothing is changed yet.').waitFor()
  await panel.getByRole('button', { name: 'Remove tap 3' }).click()
  await panel.getByLabel('Tap 2: second').fill('soon')
  await panel.getByLabel('Finish reached').selectOption({ label: 'Davit' })
  await panel.getByRole('button', { name: 'Save the correction' }).click()
  await panel.getByText('‘soon’ is not a number of seconds').waitFor()
  await panel.getByText('Please say in a few words why it is corrected.').waitFor()
  await panel.getByLabel('Tap 2: second').fill('28,5')
  const changes = panel.getByRole('region', { name: 'What is different' })
  await changes.getByRole('row', { name: 'Finish reached none Davit' }).waitFor()
  expect(await findings(page)).toEqual([])
  // A panel is closed sooner than one thinks, and what was typed is still there.
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Qualification 12: look at all records' }).click()
  const all = page.getByRole('dialog', { name: 'Qualification 12', exact: true })
  await all.getByRole('button', { name: 'Correct the record by Anna' }).first().click()
  await all.getByText('What you typed before is still here.').waitFor()
  await all.getByLabel('Why it is corrected').fill('Seen again on video')
  await all.getByRole('button', { name: 'Save the correction' }).click()
  await all.getByText('Qualification 12, team 90001: corrected.').waitFor()
  const [, corrected] = (await inForce('90001')).toSorted((a, b) => b.row.scout.localeCompare(a.row.scout))
  expect(corrected?.row).toMatchObject({ scout: 'Anna', reason: 'Seen again on video' })
  expect(corrected?.row.body).toMatchObject({
    replaces: first.id,
    finish: { attempted: 'davit', achieved: 'davit' },
    timeline: [timeline[0], { ...timeline[1], elapsed: 28.5 }],
  })
  await all.getByRole('button', { name: 'Take it back' }).click()
  await all.getByText('Qualification 12, team 90001: as it was before.').waitFor()
  const [, back] = (await inForce('90001')).toSorted((a, b) => b.row.scout.localeCompare(a.row.scout))
  expect(back?.row.body).toMatchObject({ timeline, finish, replaces: corrected?.row.id })
  await page.keyboard.press('Escape')

  const apart = page.getByRole('region', { name: 'Kept apart' })
  await apart.getByRole('row', { name: 'Note not said bent intake' }).waitFor()
  await apart.getByRole('button', { name: 'Decide' }).click()
  await apart.getByText('Please choose one of these.').waitFor()
  await apart.getByLabel('Keep the first.').check()
  await apart.getByRole('button', { name: 'Decide' }).click()
  await apart.getByText('Nothing waits for a decision.').waitFor()
  await apart.getByText('One decision').click()
  await apart.getByRole('button', { name: /^Decide anew: / }).click()
  await apart.getByLabel('Take the later one').check()
  expect(await findings(page)).toEqual([])
  await apart.getByRole('button', { name: 'Decide', exact: true }).click()
  await apart.getByText('the later one was taken').waitFor()
  expect((await inForce('90001')).map(({ row }) => row.body.note)).toContain('bent intake')
  await page.context().close()
  expect(world.errors).toEqual([])
})

const places = ['board', 'hand-in', 'sheets', 'codes', 'visits']

test.runIf(inLongForm).each(['en-US', 'de-DE'])(
  'the pages of an event fit 360 px, and no scan finds anything, in %s',
  async (locale) => {
    const page = await world.open('/event/harbour/board', { locale, viewport: { width: 360, height: 760 } })
    const found: string[] = []
    const look = async (what: string) => {
      found.push(...(await findings(page)).map((finding) => `${what}: ${finding}`))
      found.push(...(await cutTexts(page)).map((text) => `${what}: cut: ${text}`))
      if ((await wider(page)) > 0) found.push(`${what}: wider than the window`)
    }
    for (const place of places) {
      await page.goto(`${world.url}/event/harbour/${place}`)
      await page.locator('.event-places').waitFor()
      await look(place)
    }
    // The ways through the event are one group at a time.
    const groups = page.locator('.event-groups button')
    expect(await groups.count()).toBe(3)
    await groups.first().click()
    expect(await page.locator('.event-places li').count()).toBe(5)
    await page.goto(`${world.url}/event/harbour/board`)
    await page.locator('.tide .opens').nth(1).click()
    await page.locator('dialog .record-card').first().waitFor()
    await look('records')
    await page.locator('dialog .record-card button').first().click()
    await page.locator('dialog form').waitFor()
    await look('correction')
    expect(found).toEqual([])
  },
)
