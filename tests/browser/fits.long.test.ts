import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { cutTexts, screens, settled, wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

/** 1280 px at 200 % zoom are 640 px; 360 px are a small phone, and 1280 px at 400 % are 320. */
const sizes = [
  { name: '360 px', width: 360, letters: '100%' },
  { name: '320 px, a zoom of 400 %', width: 320, letters: '100%' },
  { name: '1280 px', width: 1280, letters: '100%' },
  { name: '640 px, a zoom of 200 %', width: 640, letters: '100%' },
  { name: '1280 px with letters twice as large', width: 1280, letters: '200%' },
] as const

describe.each(['en-US', 'de-DE'])('in %s nothing is cut off or beyond the edge', (locale) => {
  test.each(screens)('on $path', async ({ path, ready }) => {
    const page = await world.open(path, { locale })
    await settled(page, ready)
    const found: string[] = []
    for (const { name, width, letters } of sizes) {
      await page.setViewportSize({ width, height: 800 })
      await page.evaluate((size) => {
        document.documentElement.style.fontSize = size
      }, letters)
      await settled(page, ready)
      const over = await wider(page)
      if (over > 0) found.push(`${name}: ${over} px wider than the window`)
      for (const text of await cutTexts(page)) found.push(`${name}: ${text}`)
    }
    expect(found).toEqual([])
    await page.context().close()
  })
})

test('on a phone the masthead takes two lines at most, in both languages', async () => {
  for (const locale of ['en-US', 'de-DE'])
    for (const width of [390, 360]) {
      const page = await world.open('/help', { locale, viewport: { width, height: 740 } })
      await settled(page, '.glossary dt')
      const tops = await page
        .locator('.masthead nav a:visible')
        .evaluateAll((links) => [...new Set(links.map((link) => Math.round(link.getBoundingClientRect().top)))])
      expect(tops.length).toBeLessThanOrEqual(2)
      await expect.poll(() => page.locator('.masthead nav a:visible').count()).toBe(7)
      await page.context().close()
    }
})

test('on a phone who watches whom and the pick order need no scrolling sideways', async () => {
  for (const [path, table] of [
    ['watch', '.watch-grid tbody tr'],
    ['picks', '.picks-order tbody tr'],
  ] as const) {
    const page = await world.open(`/event/breakwater-spring/${path}`, { viewport: { width: 390, height: 740 } })
    await page.locator(table).first().waitFor()
    const beyond = await page
      .locator('.scroll')
      .evaluateAll((boxes) => boxes.map((box) => box.scrollWidth - box.clientWidth))
    expect(
      beyond.filter((px) => px > 1),
      path,
    ).toEqual([])
    await page.context().close()
  }
})

test('these measures can fail: a wide box and a text in a box too small are seen', async () => {
  const page = await world.open('/help', { viewport: { width: 360, height: 740 } })
  await settled(page, '.glossary dt')
  expect([await wider(page), await cutTexts(page)]).toEqual([0, []])
  await page.evaluate(() => {
    const [title, entry] = [document.querySelector('h1')!, document.querySelector('dt')!]
    title.style.minWidth = '500px'
    entry.style.cssText = 'width: 20px; overflow: hidden; white-space: nowrap'
  })
  expect(await wider(page)).toBeGreaterThan(100)
  expect((await cutTexts(page)).join()).toContain('alliance')
  await page.context().close()
})
