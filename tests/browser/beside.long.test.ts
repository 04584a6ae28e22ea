import { afterAll, beforeAll, expect, test } from 'vitest'
import { bar, openWorld, shownPoints, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

test('two designs’ strips share a time scale, and their difference is said in seconds and points and follows an edit', async () => {
  const page = await world.open('/designs/shearwater')
  const mine = await shownPoints(page)
  await page.getByLabel('Other design', { exact: true }).selectOption({ label: 'Kittiwake' })
  const said = page.getByTestId('beside')
  await said.getByText('Points a match: Shearwater').waitFor()
  const text = (await said.innerText()).replaceAll('\u00a0', ' ').replaceAll('\u2212', '-')
  const [, my, its, by] = text.match(
    /Shearwater takes ([\d.]+) s on average, Kittiwake ([\d.]+) s: ([\d.]+) s (?:more|less)/,
  )!
  expect(Math.abs(Math.abs(Number(its) - Number(my)) - Number(by))).toBeLessThan(0.101)
  const [, own, other, gain] = text.match(/Shearwater ([\d.]+), Kittiwake ([\d.]+): ([+-][\d.]+) for Kittiwake/)!
  expect(Number(own)).toBe(mine)
  expect(Math.abs(Number(other) - Number(own) - Number(gain))).toBeLessThan(0.101)

  // Both sentences open.
  for (const title of ['Time of the trip: Kittiwake beside Shearwater', 'Points: Kittiwake beside Shearwater']) {
    await said
      .getByRole('button')
      .nth(title.startsWith('Time') ? 0 : 1)
      .click()
    const opened = page.getByRole('dialog', { name: 'How this came about' })
    await opened.getByRole('heading', { name: title }).waitFor()
    await opened.getByText('Kittiwake, revision 1', { exact: false }).waitFor()
    await page.keyboard.press('Escape')
  }

  // The same scale: a second is as wide in both. The drive's bar begins each strip.
  const strips = ['Shearwater', 'Kittiwake'].map((name) => page.getByRole('group', { name: `Cycle strip of ${name}` }))
  const seconds: number[] = []
  for (const strip of strips) {
    const first = strip.locator('g[data-stage="drive"]').first()
    const box = (await first.locator('rect[rx]').boundingBox())!
    const takes = Number((await first.getAttribute('aria-label'))!.match(/: ([\d.]+)/)![1])
    seconds.push((box.width + 1.5) / takes)
  }
  expect(Math.abs(seconds[0]! / seconds[1]! - 1)).toBeLessThan(0.03)

  await bar(page, 'Line up under the hook').focus()
  const before = await said.innerText()
  for (let press = 0; press < 4; press++) await page.keyboard.press('PageUp')
  await page.waitForFunction(
    (old) => !document.querySelector<HTMLElement>('[data-testid=beside]')?.innerText.includes(old),
    before.split('\n')[0]!,
  )
  await page.context().close()
})

test('no page had an error', () => {
  expect(world.errors).toEqual([])
})
