import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { findingsIn, modes } from './axe.ts'
import { answered, cutTexts, eventScreens, wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

/** A small phone, and 1280 px at 200 % zoom. */
const sizes = [
  { name: '360 px', width: 360, letters: '100%' },
  { name: '640 px, a zoom of 200 %', width: 640, letters: '100%' },
  { name: '1280 px with letters twice as large', width: 1280, letters: '200%' },
] as const

describe('screens of an event', () => {
  test.each(eventScreens)(
    '%s: nothing is found in light, dark and high contrast, nothing is cut off zoomed or on a phone, in both languages',
    async (path) => {
      for (const locale of ['en-US', 'de-DE']) {
        const page = await world.open(path, { locale })
        await answered(page)
        const found = locale === 'en-US' ? await findingsIn(page, modes) : []
        for (const { name, width, letters } of sizes) {
          await page.setViewportSize({ width, height: 800 })
          await page.evaluate((size) => {
            document.documentElement.style.fontSize = size
          }, letters)
          await answered(page)
          const over = await wider(page)
          if (over > 0) found.push(`${locale}, ${name}: ${over} px wider than the window`)
          for (const text of await cutTexts(page)) found.push(`${locale}, ${name}: ${text}`)
        }
        expect(found).toEqual([])
        await page.context().close()
      }
    },
    400_000,
  )
})
