import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inLongForm } from './longForm.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const lang = (page: Page) => page.evaluate(() => document.documentElement.lang)
const ground = (page: Page) => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent?.trim() ?? '')
const openSettings = (page: Page) =>
  page.getByRole('button', { name: /Settings and help|Einstellungen und Hilfe/ }).click()

describe('the language', () => {
  test('is the browser’s, until another is chosen; the choice is kept, and nothing typed is lost by it', async () => {
    const page = await world.open('/games/breakwater', { locale: 'de-AT' })
    const length = page.locator('[data-place="field/length"]')
    await length.waitFor()
    await expect.poll(() => lang(page)).toBe('de')
    expect(await page.title()).toBe('Spiele · Cyclewright')
    await expect.poll(() => length.inputValue()).toBe('16,6')
    await page.getByLabel('Länge des Feldes').fill('17,2x')
    await page.getByText('„17,2x“ ist keine Länge').waitFor()
    await openSettings(page)
    await page.getByLabel('Sprache').selectOption('en')
    await page.getByLabel('Language').waitFor()
    await page.keyboard.press('Escape')
    await expect.poll(() => lang(page)).toBe('en')
    expect(await page.title()).toBe('Games · Cyclewright')
    // What could not be read is still there as it was typed, and is answered in the language chosen.
    await expect.poll(() => length.inputValue()).toMatch(/^17,2x/)
    await page.getByText('is not a length; write it like 0.9 m').waitFor()
    await length.fill('17,2')
    await page.reload()
    await length.waitFor()
    await expect.poll(() => lang(page)).toBe('en')
    await expect.poll(() => length.inputValue()).toBe('17.2')
    await page.context().close()
  })

  test.runIf(inLongForm)('is followed by the other tabs', async () => {
    const page = await world.open('/help')
    const other = await page.context().newPage()
    await other.goto(`${world.url}/`)
    await other.getByRole('heading', { name: 'What will your robot do' }).waitFor()
    await openSettings(page)
    await page.getByLabel('Language').selectOption('de')
    await other.getByRole('heading', { name: 'Was wird euer Roboter tun' }).waitFor()
    // The demo season is English on a German page, and says so to those who hear it; what is written over it does not.
    await expect.poll(() => other.locator('#question').getAttribute('lang')).toBe('en')
    await other.goto(`${world.url}/decisions/leave-the-hook-out`)
    await other.locator('.decision-question [lang=en]').waitFor()
    await expect.poll(() => other.locator('article li > [lang=en]:first-child').count()).toBeGreaterThan(8)
    await other.getByRole('button', { name: 'Schreiben' }).click()
    const question = other.locator('[data-place="question"]')
    await expect.poll(() => question.getAttribute('lang')).toBe('en')
    await question.fill('Bauen wir den Haken?')
    await expect.poll(() => question.getAttribute('lang')).toBeNull()
    await page.context().close()
  })
})

describe('light, dark and contrast', () => {
  test('follow the system until they are chosen, and stay chosen', async () => {
    const page = await world.open('/help', { colorScheme: 'dark' })
    await expect.poll(() => ground(page)).toBe('rgb(11, 20, 27)')
    await page.emulateMedia({ colorScheme: 'light' })
    await page.waitForFunction(() => document.documentElement.dataset['scheme'] === 'light')
    await expect.poll(() => ground(page)).toBe('rgb(248, 246, 239)')
    await openSettings(page)
    await page.getByLabel('Light or dark').selectOption('dark')
    await page.getByLabel('Contrast').selectOption('more')
    await expect.poll(() => ground(page)).toBe('rgb(0, 0, 0)')
    await page.reload()
    await page.getByRole('heading', { name: 'Help', level: 1 }).waitFor()
    await expect.poll(() => ground(page)).toBe('rgb(0, 0, 0)')
    // On paper every scheme is black on white.
    await page.emulateMedia({ media: 'print' })
    await expect.poll(() => ground(page)).toBe('rgb(255, 255, 255)')
    expect(await page.locator('h1').evaluate((title) => getComputedStyle(title).color)).toBe('rgb(0, 0, 0)')
    await page.context().close()
  })

  test.runIf(inLongForm)('colours that the system forces reach text, fields and pictures', async () => {
    const page = await world.open('/', { forcedColors: 'active' })
    await page.locator('figure.chart svg circle').first().waitFor()
    const own = await page.evaluate(() => {
      const probe = document.body.appendChild(document.createElement('span'))
      const system = (name: string) => {
        probe.style.color = name
        return getComputedStyle(probe).color
      }
      return {
        ground: [getComputedStyle(document.body).backgroundColor, system('Canvas')],
        text: [getComputedStyle(document.querySelector('h1')!).color, system('CanvasText')],
        dot: [getComputedStyle(document.querySelector('figure.chart svg circle')!).stroke, system('LinkText')],
      }
    })
    for (const [shown, forced] of Object.values(own)) expect(shown).toBe(forced)
    // Under each text the system lays a ground of its own, so that letters of that colour are gone on a filled button, unless
    // it is left as it is. Nothing computed tells of that ground.
    for (const path of ['/decisions/leave-the-hook-out', '/designs/shearwater/stopwatch', '/designs/shearwater']) {
      await page.goto(world.url + path)
      await page.locator('main button:visible').nth(2).waitFor()
      const filled = await page.locator('main button:enabled').evaluateAll((buttons) =>
        buttons
          .map((button) => getComputedStyle(button))
          .filter(({ color }) => color === getComputedStyle(document.body).backgroundColor)
          .map((style) => (style.getPropertyValue('forced-color-adjust') === 'none' ? 'left as it is' : 'covered')),
      )
      expect([path, [...new Set(filled)]]).toEqual([path, ['left as it is']])
    }
    await page.context().close()
  })
})

describe('by keyboard alone', () => {
  test('the masthead and the start page are walked through, a setting is changed, and the focus comes back', async () => {
    const page = await world.open('/')
    await page.locator('.question .facts li:nth-child(4)').waitFor()
    const walked: string[] = []
    const tab = async (until: string) => {
      for (let press = 0; press < 30 && !(await focused(page)).startsWith(until); press++) {
        await page.keyboard.press('Tab')
        walked.push(await focused(page))
        const { seen, ringed } = await page.evaluate(() => {
          const { width, height } = document.activeElement!.getBoundingClientRect()
          return { seen: width > 0 && height > 0, ringed: getComputedStyle(document.activeElement!).outlineStyle }
        })
        expect([walked.at(-1), seen, ringed]).toEqual([walked.at(-1), true, 'solid'])
      }
      expect((await focused(page)).startsWith(until)).toBe(true)
    }
    await tab('Settings and help')
    expect(walked).toEqual([
      'Skip to the content',
      'Cyclewright',
      'Start',
      'Games',
      'Quick sheet',
      'Designs',
      'Trade-offs',
      'Decisions',
      'Match',
      'Event',
      'Settings and help',
    ])
    await page.keyboard.press('Enter')
    await page.getByRole('dialog', { name: 'Settings and help' }).waitFor()
    await page.getByLabel('Contrast').focus()
    await page.keyboard.press('ArrowDown')
    await page.keyboard.press('ArrowDown')
    await page.waitForFunction(() => document.documentElement.dataset['contrast'] === 'more')
    await page.keyboard.press('Escape')
    await expect.poll(() => focused(page)).toBe('Settings and help')
    await tab('+0')
    await page.keyboard.press('Enter')
    const panel = page.getByRole('dialog', { name: 'How this came about' })
    await panel.waitFor()
    await page.getByRole('button', { name: 'Close' }).press('Enter')
    await panel.waitFor({ state: 'detached' })
    await expect.poll(() => focused(page)).toMatch(/^\+0/)
    await tab('break-even')
    await page.keyboard.press('Enter')
    await page.getByText('the value of an unknown at which another option becomes the best').waitFor()
    await page.keyboard.press('Escape')
    await page
      .getByText('the value of an unknown at which another option becomes the best')
      .waitFor({ state: 'detached' })
    await tab('Help, and all words')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'What the words mean' }).waitFor()
    await page.context().close()
  })

  test('? lists the shortcuts, but not while something is typed; Ctrl+S saves and Ctrl+Z takes back', async () => {
    const page = await world.open('/quick-sheet/first-saturday')
    const name = page.getByLabel('Name of the sheet')
    await name.fill('Which way?')
    await name.press('?')
    await expect.poll(() => page.getByRole('dialog').count()).toBe(0)
    await expect.poll(() => name.inputValue()).toBe('Which way??')
    await page.keyboard.press('Control+z')
    await expect.poll(() => name.inputValue()).toBe('First Saturday')
    await name.fill('Second Saturday')
    await page.keyboard.press('Control+s')
    await page.getByText('Saved as revision 2.').waitFor()
    await page.locator('h1').click()
    await page.keyboard.press('?')
    const list = page.getByRole('dialog', { name: 'Keyboard shortcuts' })
    await list.getByText('save what is being edited').waitFor()
    await expect.poll(() => list.locator('tbody tr').count()).toBeGreaterThan(12)
    await page.keyboard.press('Escape')
    await list.waitFor({ state: 'detached' })
    await page.context().close()
  })
})

test.runIf(inLongForm)(
  'a box is seen before it is ticked, its tick on it, and the focus on a field, in every theme',
  async () => {
    for (const scheme of ['light', 'dark'])
      for (const contrast of ['usual', 'more']) {
        const page = await world.open('/help')
        await page.evaluate(
          ([scheme, contrast]) => {
            localStorage.setItem('cyclewright/scheme', scheme!)
            localStorage.setItem('cyclewright/contrast', contrast!)
          },
          [scheme, contrast],
        )
        await page.goto(`${world.url}/games/breakwater`)
        await page.getByRole('checkbox', { name: 'Keep both halves alike' }).waitFor()
        // The last of two tasks, so that no colour is read while it still changes.
        await page.waitForTimeout(300)
        const found = await page.evaluate(() => {
          const brightness = (colour: string) => {
            const [red, green, blue] = colour
              .match(/[\d.]+/g)!
              .map(Number)
              .map((channel) =>
                channel / 255 <= 0.04045 ? channel / 255 / 12.92 : ((channel / 255 + 0.055) / 1.055) ** 2.4,
              )
            return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!
          }
          const between = (one: string, other: string) => {
            const [light, dark] = [brightness(one), brightness(other)].sort((a, b) => b - a) as [number, number]
            return (light + 0.05) / (dark + 0.05)
          }
          const boxes = [...document.querySelectorAll<HTMLInputElement>('main .mantine-Checkbox-input')]
          const open = getComputedStyle(boxes.find(({ checked }) => !checked)!)
          const ticked = boxes.find(({ checked }) => checked)!
          const sheet = getComputedStyle(ticked.closest('.sheet')!).backgroundColor
          return [
            between(open.borderTopColor, sheet),
            between(getComputedStyle(ticked).backgroundColor, sheet),
            between(
              getComputedStyle(ticked.parentElement!.querySelector('svg')!).color,
              getComputedStyle(ticked).backgroundColor,
            ),
          ]
        })
        // The field that has the focus is told by more than the colour of its frame.
        const field = page.locator('[data-place="field/length"]')
        await field.focus()
        expect(await field.evaluate((element) => getComputedStyle(element).outlineStyle)).toBe('solid')
        for (const ratio of found) expect(ratio, `${scheme}, ${contrast}`).toBeGreaterThanOrEqual(3)
        await page.context().close()
      }
  },
)

test('nothing went wrong in any page', () => {
  expect(world.errors).toEqual([])
})
