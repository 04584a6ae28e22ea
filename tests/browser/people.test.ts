import type { Page } from '@playwright/test'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { findings } from './axe.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const passphrase = 'seven gulls above the quay'

/** Widths at which the masthead takes more than one line, with a nickname that is cut off. */
async function lineBreaks(page: Page): Promise<number[]> {
  await page.locator('.who-is-in').evaluate((link) => link.append(' from the far end of the quay'))
  const broken: number[] = []
  for (const width of [1920, 1280, 1216, 1120, 1024, 960, 833, 768]) {
    await page.setViewportSize({ width, height: 900 })
    const middles = await page.locator('.masthead-line > *:visible, .masthead nav a:visible').evaluateAll((all) =>
      all.map((element) => {
        const { top, height } = element.getBoundingClientRect()
        return top + height / 2
      }),
    )
    if (Math.max(...middles) - Math.min(...middles) > 10) broken.push(width)
  }
  await page.setViewportSize({ width: 1280, height: 900 })
  return broken
}

test('a lead claims the server, invites a scout, who comes in with a phone, and signs the phone out', async () => {
  const { token } = await world.store.entrance.claimLink(await world.store.ensureWorkspace('default'), 1)
  const lead = await world.open(`/claim#${token}`)
  await lead.getByRole('button', { name: 'Claim the server' }).click()
  await lead.getByText('Please say how the team calls you.').waitFor()
  await lead.getByLabel('Nickname').fill('Ada')
  await lead.getByLabel('Passphrase', { exact: true }).fill('too short')
  await lead.getByRole('button', { name: 'Claim the server' }).click()
  await lead.getByText('this one has 9').first().waitFor()
  // Nothing typed is lost, and the link stands in no address any more.
  expect([await lead.getByLabel('Nickname').inputValue(), new URL(lead.url()).hash]).toEqual(['Ada', ''])
  await lead.getByLabel('Passphrase', { exact: true }).fill(passphrase)
  await lead.getByRole('button', { name: 'Claim the server' }).click()
  await lead.getByRole('heading', { name: 'People', level: 1 }).waitFor()
  await lead.getByRole('banner').getByRole('link', { name: 'Ada' }).waitFor()

  expect(await lineBreaks(lead)).toEqual([])
  if (inLongForm) {
    const german = await world.open('/help', { locale: 'de-DE', storageState: await lead.context().storageState() })
    await german.getByRole('banner').getByRole('link', { name: 'Ada' }).waitFor()
    expect(await lineBreaks(german)).toEqual([])
    await german.context().close()
  }

  await lead.getByLabel('For whom').fill('Kit')
  await lead.getByRole('button', { name: 'Make the invitation' }).click()
  await lead.getByRole('img', { name: 'Code of an invitation as scout' }).waitFor()
  const link = new URL((await lead.locator('.invitation-slip code').textContent()) ?? '')
  expect(await findings(lead)).toEqual([])

  const phone = await world.open(link.pathname + link.hash, { viewport: { width: 360, height: 780 } })
  await phone.getByText('The invitation is for Kit.').waitFor()
  expect(await phone.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360)
  await phone.getByLabel('This device is called').fill('Kit’s phone')
  await phone.getByRole('button', { name: 'Come in' }).click()
  await phone.waitForURL(/\/stands/)
  const session = () =>
    phone.evaluate(async () => ((await (await fetch('/api/session')).json()) as { role: string | null }).role)
  expect(await session()).toBe('scout')

  await lead.reload()
  await lead.getByRole('button', { name: 'Rename “Kit’s phone” of Kit' }).click()
  await lead.getByLabel('New name of the device').fill('Red phone')
  await lead.getByRole('button', { name: 'Save the name' }).click()
  await lead.getByRole('rowheader', { name: 'Red phone' }).waitFor()

  // A page of an event that is open learns by itself what its reader may do now.
  await lead.getByLabel('Role of Kit').selectOption('lead')
  await expect.poll(session).toBe('lead')
  await phone.goto(`${world.url}/event/breakwater-spring/schedule`)
  await phone.getByRole('heading', { name: 'Bring a schedule in' }).waitFor()
  await lead.getByLabel('Role of Kit').selectOption('viewer')
  await phone.getByRole('heading', { name: 'Bring a schedule in' }).waitFor({ state: 'detached' })
  await phone.getByRole('heading', { name: 'Schedule' }).waitFor()

  // So does one that no news of an event reach, within the quarter of a minute after which it asks who one is.
  const list = await world.open('/event', { storageState: await phone.context().storageState() })
  await list.clock.install()
  await list.reload()
  await list.getByRole('heading', { name: 'Events', level: 1 }).waitFor()
  const bringIn = list.getByRole('heading', { name: 'Bring an event in' })
  await lead.getByLabel('Role of Kit').selectOption('lead')
  await expect.poll(session).toBe('lead')
  expect(await bringIn.count()).toBe(0)
  await list.clock.runFor(15_100)
  await bringIn.waitFor()
  await lead.getByLabel('Role of Kit').selectOption('viewer')
  await expect.poll(session).toBe('viewer')
  await list.clock.runFor(15_100)
  await bringIn.waitFor({ state: 'detached' })
  await list.context().close()

  await lead.getByRole('button', { name: 'Sign Kit out everywhere' }).click()
  await lead.getByText('Kit is signed out on all devices at once').waitFor()
  await lead.getByRole('group').getByRole('button', { name: 'Sign out everywhere' }).click()
  await lead.getByText('Signed out on one device.').waitFor()
  await lead.getByRole('rowheader', { name: 'Red phone' }).waitFor({ state: 'detached' })
  await phone.getByRole('dialog', { name: 'Sign in' }).waitFor()
  expect(await session()).toBeNull()
  await lead.getByText('What was changed').click()
  await lead.getByRole('cell', { name: 'signed somebody out everywhere' }).waitFor()

  await lead.getByText('There is no copy yet.').waitFor()
  await lead.getByRole('button', { name: 'Make a copy now' }).click()
  await lead.getByText('None has been proven yet.').waitFor()
  await lead.getByRole('button', { name: 'Prove the newest' }).click()
  await lead
    .getByText(/^The newest copy is of .+ The last that was found whole was proven on .+, with \d+ rows\.$/)
    .waitFor()
  await phone.context().close()

  if (inLongForm) {
    // What is held of somebody is a file, and deleting asks for the nickname.
    const saving = lead.waitForEvent('download')
    await lead.getByRole('link', { name: 'Save all that is held of Kit' }).click()
    expect((await saving).suggestedFilename()).toBe('person-Kit.json')
    await lead.getByRole('button', { name: 'Delete Kit' }).click()
    const sure = lead.getByRole('form', { name: 'Delete Kit' })
    await sure.getByRole('button', { name: 'Delete for good' }).click()
    await sure.getByText('Please type the nickname as it stands here.').waitFor()
    expect(await findings(lead)).toEqual([])
    await sure.getByRole('textbox').fill('kit')
    await sure.getByRole('textbox').press('Enter')
    await lead.getByText('The person is deleted.').waitFor()
    await lead.getByRole('rowheader', { name: 'Kit', exact: true }).waitFor({ state: 'detached' })
    expect((await world.store.workspace(await world.store.ensureWorkspace('default')).people.list()).length).toBe(1)
  }

  // A session that ends under a form: the panel comes over it, and what was typed is still there afterwards.
  await lead.goto(`${world.url}/people`)
  await lead.getByLabel('For whom').fill('Rosa')
  await lead.context().clearCookies()
  await lead.getByRole('button', { name: 'Make the invitation' }).click()
  const panel = lead.getByRole('dialog', { name: 'Sign in' })
  await panel.getByLabel('Nickname').fill('ada')
  await panel.getByLabel('Passphrase', { exact: true }).fill(passphrase)
  await panel.getByRole('button', { name: 'Sign in' }).click()
  await panel.waitFor({ state: 'detached' })
  expect(await lead.getByLabel('For whom').inputValue()).toBe('Rosa')
  await lead.getByRole('button', { name: 'Make the invitation' }).click()
  await lead.getByText('Rosa', { exact: true }).first().waitFor()
  await lead.context().close()
})

test('nothing went wrong in any page but what the test brought about', () => {
  // A browser writes each refused request into its console.
  expect(world.errors.filter((error) => !/status of (400|401)/.test(error))).toEqual([])
})
