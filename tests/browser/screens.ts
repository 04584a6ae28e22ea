import type { Page } from '@playwright/test'
import { expect } from 'vitest'

/** Every screen, with an element that is there when it is complete. Selectors, not texts: they hold in every language. */
export const screens: readonly { path: string; ready: string }[] = [
  { path: '/', ready: '.question .facts li:nth-child(4)' },
  { path: '/games', ready: '.shelf a[href="/games/breakwater"], a[href="/games/breakwater"]' },
  { path: '/games/breakwater', ready: '[data-handle]' },
  { path: '/games/breakwater/consequences', ready: 'table.tide tbody tr' },
  { path: '/quick-sheet', ready: 'a[href="/quick-sheet/first-saturday"]' },
  { path: '/quick-sheet/first-saturday', ready: 'table.tide tbody tr td' },
  { path: '/guess', ready: 'main form, main input' },
  { path: '/designs', ready: 'a[href="/designs/shearwater"]' },
  { path: '/designs/shearwater', ready: '[data-stage]' },
  { path: '/trade-offs', ready: 'a[href="/trade-offs/hook-or-practice"]' },
  { path: '/trade-offs/hook-or-practice', ready: 'figure.chart' },
  { path: '/decisions', ready: 'a[href="/decisions/leave-the-hook-out"]' },
  { path: '/decisions/leave-the-hook-out', ready: 'main h2' },
  { path: '/match/breakwater', ready: '.match-field' },
  { path: '/parts', ready: 'a[href="/parts/wheel-150"]' },
  { path: '/help', ready: '.glossary dt' },
  { path: '/no-such-screen', ready: 'main h1' },
]

/** The screens of the demo's event. */
export const eventScreens: readonly string[] = [
  ...['schedule', 'results', 'ranking', 'watch', 'teams', 'doubts', 'estimates', 'estimates?teams=90001,90002'],
  ...[
    'estimates?team=90001',
    'estimates?match=qualification-30',
    'field',
    'forecasts',
    'look',
    'seeds',
    'after',
    'exchange',
  ],
  ...['briefing?match=qualification-30&side=red', 'pit', 'picks', 'playoffs', 'hand-in', 'sheets', 'codes', 'board'],
  'visits',
].map((part) => `/event/breakwater-spring/${part}`)

/** Waits until a screen of an event has its last answer and nothing on it moves any more. */
export async function answered(page: Page): Promise<void> {
  await page.locator('main h1').first().waitFor()
  await expect.poll(() => page.locator('main .mantine-Loader-root').count(), { timeout: 150_000 }).toBe(0)
  await settled(page, 'main h1')
}

/** Waits until the screen is drawn and nothing on it moves any more. */
export async function settled(page: Page, ready: string): Promise<void> {
  await page.locator(ready).first().waitFor()
  await page.waitForFunction(() => {
    const seen = window as unknown as { drawn?: { height: number; since: number } }
    const { scrollHeight } = document.documentElement
    if (seen.drawn?.height !== scrollHeight) seen.drawn = { height: scrollHeight, since: performance.now() }
    return performance.now() - seen.drawn.since > 400
  })
}

/** By how many pixels the page is wider than its window. */
export const wider = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)

/** Texts that are cut off, because their box hides what does not fit, or that spill over what stands beside them. */
export const cutTexts = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const hides = (value: string) => value === 'hidden' || value === 'clip'
    const spilling = [
      ...document.querySelectorAll<HTMLElement>(
        'main .mantine-InputWrapper-root, main button, main h1, main h2, main h3, main p, main li, main th, main td, main dt, main dd, main legend, main summary, main .sheet, dialog label',
      ),
    ].filter(
      (element) =>
        element.scrollWidth > element.clientWidth + 1 &&
        !element.closest('svg') &&
        getComputedStyle(element).clipPath === 'none',
    )
    const hidden = [...document.querySelectorAll<HTMLElement>('body *')].filter((element) => {
      const own = [...element.childNodes].some(({ nodeType, textContent }) => nodeType === 3 && textContent?.trim())
      if (!own || element.closest('svg') || element.clientWidth <= 1) return false
      const { overflowX, overflowY, clipPath } = getComputedStyle(element)
      // Meant for ears alone.
      if (clipPath !== 'none') return false
      const across = hides(overflowX) && element.scrollWidth > element.clientWidth + 1
      const down = hides(overflowY) && element.scrollHeight > element.clientHeight + 1
      return across || down
    })
    return [...hidden, ...spilling].map(
      (element) => `${element.tagName}.${element.className}: ${element.textContent?.slice(0, 60)}`,
    )
  })
