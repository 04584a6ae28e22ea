import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from '@playwright/test'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { inLongForm } from './longForm.ts'
import { faintInPictures } from './pictureContrast.ts'
import { screens, settled } from './screens.ts'
import { openWorld, type World } from './world.ts'

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** Rules of what colours alone decide. The enhanced contrast of 7 : 1 is of level AAA and must be asked for. */
export const colours = ['color-contrast', 'link-in-text-block']
export const enhanced = [...colours, 'color-contrast-enhanced']

/**
 * What the scan finds in the page: by all rules or only some, everywhere or within a selector. Run in the page itself, which has no
 * frames of other sites, and without working out what passes where: a quarter of the time, and the same findings.
 */
export async function findings(page: Page, only?: string[], within?: string): Promise<string[]> {
  const axe = new AxeBuilder({ page }).setLegacyMode().options({ resultTypes: ['violations'] })
  if (within) axe.include(within)
  const { violations } = await (only ? axe.withRules(only) : axe.withTags(rules)).analyze()
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${impact}: ${id}: ${target.join(' ')}: ${failureSummary}`),
  )
}

/** All rules once; what another mode changes is colours, and nothing else. */
export const modes = [
  { name: 'light', media: { colorScheme: 'light', contrast: 'no-preference' }, only: undefined },
  { name: 'dark', media: { colorScheme: 'dark', contrast: 'no-preference' }, only: colours },
  { name: 'light, high contrast', media: { colorScheme: 'light', contrast: 'more' }, only: enhanced },
  { name: 'dark, high contrast', media: { colorScheme: 'dark', contrast: 'more' }, only: enhanced },
] as const

/** Screens that with the game’s, which its own test scans, use every colour; the others are looked at in every mode by the long form. */
const inEveryMode = ['/', '/designs/shearwater', '/parts']

/** What the scan finds in the page that is open: in every mode, or in the first. Colours are looked at within a selector only, if there is one. */
export async function findingsIn(
  page: Page,
  scanned: readonly (typeof modes)[number][],
  within?: string,
): Promise<string[]> {
  const found: string[] = []
  for (const { name, media, only } of scanned) {
    await page.emulateMedia(media)
    await page.locator(`html[data-scheme="${media.colorScheme}"]`).waitFor()
    for (const finding of await findings(page, only, only && within)) found.push(`${name}: ${finding}`)
    if (within) continue
    for (const text of await faintInPictures(page, only === enhanced ? 7 : 4.5)) found.push(`${name}: ${text}`)
  }
  return found
}

/** Screens that their own test scans at its end, with more on them. */
const inItsOwnTest = ['/games/breakwater', '/match/breakwater']

/** Scans some of the screens; they are shared out among files, which run at the same time. */
export function scanScreens(from: number, to: number): void {
  describe('the accessibility scan finds nothing in light, dark and high contrast', () => {
    let world: World
    beforeAll(async () => {
      world = await openWorld()
    })
    afterAll(() => world.close())

    const seen = screens.slice(from, to).filter(({ path }) => inLongForm || !inItsOwnTest.includes(path))
    test.each(seen)('on $path', async ({ path, ready }) => {
      const page = await world.open(path)
      await settled(page, ready)
      const thorough = inLongForm || inEveryMode.includes(path)
      expect(await findingsIn(page, thorough ? modes : modes.slice(0, 1))).toEqual([])
      // A loading sign that stays means that a part of the screen never comes.
      if (thorough)
        await expect.poll(() => page.getByText(/^Loading .* …$/).allTextContents(), { timeout: 150_000 }).toEqual([])
      await page.context().close()
    })

    test('no page had an error', () => {
      expect(world.errors).toEqual([])
    })
  })
}
