import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const bring = (page: Page, name: string, content: string | Buffer) =>
  page
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(content as string) })

const list = async (kind: string): Promise<unknown[]> =>
  fetch(`${world.url}/api/documents/${kind}`).then((answer) => answer.json())
// biome-ignore lint/suspicious/noExplicitAny: a document that is broken on purpose
const bodyOf = async (kind: string, id: string): Promise<any> =>
  (await fetch(`${world.url}/api/documents/${kind}/${id}`).then((answer) => answer.json())).body

describe.each([
  {
    kind: 'decision',
    path: '/decisions',
    id: 'leave-the-hook-out',
    noun: 'decision record',
    broken: ['snapshot', 'game'],
  },
  { kind: 'design', path: '/designs', id: 'puffin', noun: 'design', broken: ['robot', 'drive'] },
  { kind: 'comparison', path: '/trade-offs', id: 'hook-or-practice', noun: 'trade-off', broken: ['game'] },
])('a broken file with a $noun', ({ kind, path, id, noun, broken }) => {
  test('is answered in words, whatever is broken, and nothing is saved', async () => {
    const page = await world.open(path)
    const alert = page.getByRole('alert')
    const before = (await list(kind)).length
    const body = await bodyOf(kind, id)
    const text = JSON.stringify(body)
    // What has nothing to do with the kind of document is tried with one of them.
    const thorough = inLongForm || kind === 'decision'
    const inner = (edit: (part: Record<string, unknown>) => void) => {
      const copy = structuredClone(body)
      edit(broken.reduce((part, key) => part[key], copy))
      return JSON.stringify(copy)
    }

    await bring(page, 'cut.json', text.slice(0, text.length / 2))
    await alert.getByText('The file is not JSON.').waitFor()
    await bring(page, 'binary.json', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0xff, 0x00]))
    await alert.getByText('The file is not JSON.').waitFor()
    await bring(page, 'empty.json', '')
    await alert.getByText('The file is not JSON.').waitFor()
    for (const other of thorough ? ['[]', 'null', '42', '{"surprise": 1}'] : ['[]']) {
      await bring(page, 'other.json', other)
      await alert.getByText(`The file does not hold a ${noun}`).waitFor()
    }
    await bring(page, 'newer.json', JSON.stringify({ ...body, format: 2 }))
    await alert
      .getByText(/format must be 1, the only one known here, got 2/)
      .first()
      .waitFor()
    await bring(
      page,
      'unknown.json',
      inner((part) => Object.assign(part, { surprise: 1 })),
    )
    await alert
      .getByText(/surprise/)
      .first()
      .waitFor()
    await bring(page, 'large.json', JSON.stringify({ ...body, filling: 'x'.repeat(2_200_000 - text.length) }))
    await alert.getByText('The file has 2.2 MB; a document has at most 2 MB.').waitFor()
    if (thorough) {
      await bring(page, 'larger.json', Buffer.alloc(11_000_000, ' '))
      await alert.getByText('The file has 11 MB; a document has at most 2 MB.').waitFor()
    }

    expect((await list(kind)).length).toBe(before)
    // The page still takes a whole file, beside the document that has its id.
    await bring(page, 'whole.json', text)
    await page.waitForURL((url) => url.pathname.startsWith(`${path}/`))
    expect((await list(kind)).length).toBe(before + 1)
    await page.context().close()
  })
})

test('two tabs of one browser on one record: each keeps what was typed in it, and the second to save keeps both', async () => {
  const first = await world.open('/decisions/leave-the-hook-out')
  const second = await first.context().newPage()
  await second.goto(first.url())
  for (const page of [first, second]) await page.getByRole('button', { name: 'Write on it' }).click()
  await first.getByLabel('Result').fill('Typed in the first tab.')
  await second.getByLabel('What else is said about checking it').fill('Typed in the second tab.')
  await first.getByRole('button', { name: 'Save', exact: true }).click()
  await first.getByText('Saved as revision 2.').waitFor()
  // The first has saved; what the second has not is still there after a reload.
  await second.reload()
  await second.getByText(/^Unsaved edits of .* were found in this browser/).waitFor()
  await second.getByRole('button', { name: 'Write on it' }).click()
  await expect
    .poll(() => second.getByLabel('What else is said about checking it').inputValue())
    .toBe('Typed in the second tab.')
  await second.getByRole('button', { name: 'Save', exact: true }).click()
  const panel = second.getByRole('dialog', { name: 'Somebody saved in between' })
  await panel
    .getByRole('row', { name: /result/ })
    .getByText('Typed in the first tab.')
    .waitFor()
  await panel.getByRole('button', { name: 'Keep both' }).click()
  await second.getByText('Saved as revision 3.').waitFor()
  const { result, checkAtEvent } = await bodyOf('decision', 'leave-the-hook-out')
  expect([result, checkAtEvent]).toEqual(['Typed in the first tab.', 'Typed in the second tab.'])
  await first.context().close()
})

test('a connection lost while a record is saved loses nothing, and the same save goes through when it is back', async () => {
  const page = await world.open('/decisions/leave-the-hook-out')
  await page.getByRole('button', { name: 'Write on it' }).click()
  await page.getByLabel('Question', { exact: true }).fill('Do we hang, and if so, who holds the rope?')
  await page.getByLabel('Result').fill('Written without a network.')
  await page.context().setOffline(true)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText('The server does not answer').first().waitFor()
  await expect.poll(() => page.getByLabel('Result').inputValue()).toBe('Written without a network.')
  await page.context().setOffline(false)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText(/^Saved as revision \d+\.$/).waitFor()
  const { question, result } = await bodyOf('decision', 'leave-the-hook-out')
  expect([question, result]).toEqual(['Do we hang, and if so, who holds the rope?', 'Written without a network.'])
  await page.context().close()
})

test('nothing was thrown in any page', () => {
  // A refused file and a lost connection are failed requests, which the browser reports; they are no errors of the page.
  expect(world.errors.filter((error) => !/Failed to load resource/.test(error))).toEqual([])
})
