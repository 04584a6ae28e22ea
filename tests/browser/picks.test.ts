import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { seededEvent } from '../../seed/index.ts'
import { onlyWorkspace } from '../../src/app.ts'
import { type KeptLine, protocolOf } from '../../src/model/picks/protocol/index.ts'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { readPdf } from './pdf.ts'
import { cutTexts, wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

const { event } = seededEvent()
const address = `/event/${event.id}/picks`
let world: World

beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const kept = async (): Promise<KeptLine[]> =>
  world.store.workspace(await world.store.ensureWorkspace(onlyWorkspace)).selection.lines(event.id)
const called = (lines: readonly KeptLine[]) =>
  lines.flatMap(({ line }) => (line.kind === 'called' ? [`${line.step.kind} ${line.step.team}`] : []))

const order = (page: Page) => page.getByRole('region', { name: 'Pick order', exact: true })
/** Waits for the order of what is so now; the first one waits for the server to work all robots out. */
async function computed(page: Page): Promise<void> {
  await order(page).waitFor({ timeout: 150_000 })
  await expect.poll(() => order(page).getAttribute('aria-busy'), { timeout: 60_000 }).toBe('false')
}
const free = (page: Page) => page.getByRole('group', { name: /a tap says that it accepts$/ }).getByRole('button')

async function begun(page: Page): Promise<void> {
  await page.getByText('Begin the selection').click()
  await page.getByRole('button', { name: 'Begin', exact: true }).click()
  await page.getByText(/invites, round 1$/).waitFor()
}

test.runIf(inLongForm)(
  'a selection is called out name by name, the order follows, without a connection too',
  async () => {
    const page = await world.open(address)
    await computed(page)
    const [first] = await order(page).getByRole('rowheader').allInnerTexts()
    await begun(page)
    const names = await free(page).allInnerTexts()
    // Whoever stands first in the order is taken by the first alliance, and can not be had any more.
    const best = first!.split(/\s/)[0]!
    expect(names).toContain(best)
    await free(page).getByText(best, { exact: true }).click()
    await page.getByText(/^Alliance 2 with captain .* invites, round 1$/).waitFor()
    await computed(page)
    expect(await order(page).getByRole('rowheader').allInnerTexts()).not.toContain(first)
    await expect.poll(async () => called(await kept())).toEqual([`accepts ${best}`])

    // The network is gone: the next lines count here, and are sent when it is back.
    await page.context().setOffline(true)
    const next = (await free(page).first().innerText()).trim()
    await page.getByRole('radio', { name: 'Declines' }).check()
    await page
      .getByRole('group', { name: /a tap says that it declines$/ })
      .getByRole('button')
      .first()
      .click()
    await page.getByText('One line is on this device alone').waitFor()
    await page.getByText(`Declined, and not invited again: ${next}.`).waitFor()
    await computed(page)
    expect(called(await kept())).toEqual([`accepts ${best}`])
    await page.context().setOffline(false)
    await expect
      .poll(async () => called(await kept()), { timeout: 15_000 })
      .toEqual([`accepts ${best}`, `declines ${next}`])

    // Set aside: seen as long as the key is held.
    const aside = page.getByRole('region', { name: 'Set aside' })
    const [team] = (await order(page).getByRole('rowheader').first().innerText()).split(/\s/)
    await aside.getByLabel('Team').fill(team!)
    await aside.getByRole('button', { name: 'Set aside' }).click()
    await aside.getByText('Say why, in a word or two.').waitFor()
    await aside.getByLabel('Reason').fill('leaks oil')
    await aside.getByRole('button', { name: 'Set aside' }).click()
    await expect.poll(() => order(page).getByRole('rowheader').first().innerText()).not.toContain(team)
    expect(await page.getByText('leaks oil').count()).toBe(0)
    await aside.getByRole('button', { name: 'Hold to see' }).focus()
    await page.keyboard.down('Space')
    await aside.getByText(`${team}: leaks oil`).waitFor()
    await page.keyboard.up('Space')
    await expect.poll(() => page.getByText('leaks oil').count()).toBe(0)
    // The decline is taken back, for everybody.
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => page.getByText(/^Declined/).count()).toBe(0)
    await expect.poll(async () => protocolOf(await kept()).selection?.state.declined).toEqual([])
  },
)

test.runIf(inLongForm)('two write at once: the second is told, and decides what becomes of its lines', async () => {
  const [one, other] = [await world.open(address), await world.open(address)]
  for (const page of [one, other]) {
    await page.getByText(/invites, round 1$/).waitFor()
    await computed(page)
  }
  await other.context().setOffline(true)
  const [first, second] = await free(one).allInnerTexts()
  await free(other).getByText(second!, { exact: true }).click()
  await other.getByText('One line is on this device alone').waitFor()
  await free(one).getByText(first!, { exact: true }).click()
  await expect.poll(async () => called(await kept()).at(-1)).toBe(`accepts ${first}`)
  await other.context().setOffline(false)
  await other.getByRole('heading', { name: 'Somebody else was quicker' }).waitFor()
  await other.getByRole('alert').getByText(`${second} accepted.`).waitFor()
  // It may still be invited: by the next alliance.
  await other.getByRole('button', { name: 'Write what still fits behind it' }).click()
  await expect.poll(async () => called(await kept()).slice(-2)).toEqual([`accepts ${first}`, `accepts ${second}`])
  // The other page hears of it.
  await one
    .getByRole('row', { name: new RegExp(second!) })
    .first()
    .waitFor()
  await one.getByText(`${second} accepted.`).waitFor()
})

test.runIf(inLongForm)(
  'the order is refined, kept by hand with what it costs, and printed; offers are compared',
  async () => {
    const page = await world.open(address)
    await computed(page)
    await page.getByLabel('We are').selectOption(protocolOf(await kept()).selection!.state.alliances.at(-1)!.captain)
    await computed(page)
    await page.getByRole('button', { name: 'Refine by simulated matches' }).click()
    await page.getByText(/The first are simulated, up to \d+ matches each\./).waitFor()
    await page.getByRole('button', { name: 'Stop' }).click()
    await page.getByText('Stopped; what was simulated is kept.').waitFor()
    await page.getByRole('button', { name: 'Compare accepting and declining' }).click()
    await page.getByText(/^Chance to win the event: /).waitFor()
    // Whom we want first goes down by one, which costs what the two differ by.
    const own = page.getByRole('region', { name: 'Our own order' })
    await own.getByText('The order, to be changed').click()
    const first = await own.getByRole('listitem').first().locator('.numeral').innerText()
    await own.getByRole('button', { name: `${first} down` }).click()
    await own.getByText(new RegExp(`^before ${first} costs \\d`)).waitFor()
    await own.getByRole('button', { name: 'Keep this order' }).click()
    await expect.poll(async () => protocolOf(await kept()).order[1]).toBe(first)
    expect(await findings(page)).toEqual([])
    const pages = await readPdf(await page.pdf({ format: 'A4' }))
    const text = pages.map((each) => each.text).join(' ')
    expect(text).toContain('alliances')
    expect(text).not.toContain('leaksoil')
    await page.setViewportSize({ width: 360, height: 800 })
    expect(await wider(page)).toBe(0)
    expect(await cutTexts(page)).toEqual([])
  },
)

test.runIf(inLongForm)(
  'the playoffs go on from the selection: chances, who sits out, roles against whom we meet',
  async () => {
    const page = await world.open(address)
    await page.getByText(/invites, round/).waitFor()
    for (;;) {
      const lines = (await kept()).length
      if ((await page.getByText('The selection is over').count()) > 0) break
      await free(page).first().click()
      await expect.poll(async () => (await kept()).length).toBeGreaterThan(lines)
    }
    await page.goto(`${world.url}/event/${event.id}/playoffs`)
    const { alliances } = protocolOf(await kept()).selection!.state
    await page.getByLabel('We are').selectOption(alliances[0]!.captain)
    const chances = page.getByRole('region', { name: 'Who wins the event' })
    await chances.getByRole('rowheader', { name: 'Alliance 1, ours' }).waitFor()
    await page.getByRole('button', { name: 'Compare the threes' }).click()
    const threes = page.getByRole('region', { name: 'Who sits out' }).getByRole('row')
    await expect.poll(() => threes.count()).toBe(5)
    await page.getByRole('button', { name: 'Look for roles' }).click()
    await page.getByText(/^Chance to win with the best line-up: /).waitFor()
    await page.getByRole('button', { name: 'Stop' }).click()
    expect(await findings(page)).toEqual([])
    await page.setViewportSize({ width: 360, height: 800 })
    // Tables turn into lists once their new width is measured.
    await expect.poll(() => wider(page)).toBe(0)
  },
)
