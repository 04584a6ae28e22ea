import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { readPdf, squeezed } from './pdf.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

/** What looks on paper as if it could be typed into, chosen or pressed: a frame, a ground, an arrow. */
const controls = async (page: Page): Promise<string[]> => {
  await page.emulateMedia({ media: 'print' })
  return page.locator('main :is(input, select, textarea, button), main .mantine-Input-section').evaluateAll((all) =>
    all
      .filter((element) => element.checkVisibility() && !element.matches('[type=checkbox], [type=radio]'))
      .filter((element) => {
        const { borderTopStyle, backgroundColor, appearance, cursor } = getComputedStyle(element)
        if (element.matches('button')) return !element.matches('.opens, .fold-head')
        if (element.matches('.mantine-Input-section')) return element.querySelector('svg') !== null
        return borderTopStyle !== 'none' || backgroundColor !== 'rgba(0, 0, 0, 0)' || appearance !== 'none' || !cursor
      })
      .map((element) => element.outerHTML.slice(0, 200)),
  )
}

describe.each(['A4', 'Letter'] as const)('on %s', (format) => {
  test('a quick sheet is a table of what was typed, and says nothing of what can be done with it', async () => {
    const page = await world.open('/quick-sheet/first-saturday')
    await page.getByTestId('ranking').waitFor()
    const pages = await readPdf(await page.pdf({ format }))
    const [first] = pages
    // Heads and ways stand on the first page, the three times of a finish among them.
    for (const text of ['Pieces a trip', 'Three at a time to the piers', '12 16 25', 'Dry dock', 'Ranked'])
      expect(first!.text).toContain(squeezed(text))
    const all = pages.map(({ text }) => text).join('')
    for (const text of ['Three strengths of play', '0.75']) expect(all).toContain(squeezed(text))
    for (const text of ['Blind guess round', 'From the sheet to designs', 'Name of the sheet', 'Add a way'])
      expect(all).not.toContain(squeezed(text))
    expect(Math.min(...pages.flatMap(({ words }) => words.map(({ size }) => size)))).toBeGreaterThanOrEqual(8.9)
    expect(await controls(page)).toEqual([])
    await page.context().close()
  })

  test('a trade-off has its values as text, and each heading with its picture, whose letters can be read', async () => {
    const page = await world.open('/trade-offs/hook-or-practice')
    await page
      .getByText('Computed in your browser from the documents as they stand here.')
      .waitFor({ timeout: 150_000 })
    // What lies below is looked for without anybody having scrolled there. Until it is found, paper says that it is missing.
    const search = page.getByRole('progressbar', { name: 'Progress of the search' })
    if (format === 'Letter' && (await search.isVisible())) {
      const atOnce = (await readPdf(await page.pdf({ format }))).map(({ text }) => text).join('')
      expect(atOnce).toMatch(/whenthiswasprinted,\dof\dunknowns/)
    }
    await search.waitFor({ state: 'detached', timeout: 150_000 })
    const pages = await readPdf(await page.pdf({ format }))
    const list = pages.find(({ text }) => text.includes(squeezed('Which arguments matter')))
    expect(list!.text).toContain(squeezed('These arguments do not matter'))
    // The picture, and what it shows.
    const swing = pages.find(({ text }) =>
      text.includes(squeezed('Each unknown alone, from its low to its high value')),
    )
    for (const name of ['Hang success', 'Seconds held per buoy', 'Hooking on at the gantry', 'still the best'])
      expect(swing!.text).toContain(squeezed(name))
    const all = pages.map(({ text }) => text).join('')
    // Each value stands on the line of its name, close to it, with its unit.
    const words = pages.flatMap((sheet, page) => sheet.words.map((word) => ({ ...word, page })))
    const after = (name: string, value: string) =>
      words.some(
        (said) =>
          said.text.trim() === name &&
          words.some(
            ({ text, page, box }) =>
              text.trim() === value &&
              page === said.page &&
              Math.abs(box[1] - said.box[1]) < 3 &&
              box[0] > said.box[2] &&
              box[0] - said.box[2] < 12,
          ),
      )
    for (const [name, value] of [
      ['Low', '35'],
      ['35', '%'],
      ['Likely', '74'],
      ['High', '97'],
    ] as const)
      expect([name, value, after(name, value)]).toEqual([name, value, true])
    // What nobody has drawn, forms that only add, and links that only open have no place on it.
    for (const text of [
      'When this was printed',
      'Two unknowns at once',
      'Another unknown',
      'Override a number',
      'Write it down',
    ])
      expect(all).not.toContain(squeezed(text))
    expect(all).not.toContain(squeezed('How this came about'))
    expect(Math.min(...pages.flatMap(({ words }) => words.map(({ size }) => size)))).toBeGreaterThanOrEqual(8.9)
    expect(await controls(page)).toEqual([])
    await page.context().close()
  })
})
