import type { Page } from '@playwright/test'

export const path = '/trade-offs/hook-or-practice'
export const slow = { timeout: 150_000 }

export const section = (page: Page, name: string) => page.getByRole('region', { name, exact: true })

/** Opens a part that answers a rarer question. */
export const unfold = (page: Page, title: string) =>
  page.getByRole('heading', { name: title, exact: true }).getByRole('button', { expanded: false }).click(slow)

/** What is looked for behind the screen is found. */
export async function turnsKnown(page: Page) {
  const matter = section(page, 'Which arguments matter')
  await matter.waitFor(slow)
  // It begins when it is seen.
  await matter.scrollIntoViewIfNeeded()
  await matter.getByText('Looking for what does not matter').waitFor({ state: 'detached', ...slow })
  return matter
}

/** The map of the demo’s question, as soon as all of it is drawn. */
export async function drawMap(page: Page) {
  const map = section(page, 'Two unknowns at once')
  await unfold(page, 'Two unknowns at once')
  await map.getByRole('button', { name: 'Draw the map' }).click()
  await map.getByText('along the border twice as fine').waitFor(slow)
  return map
}
