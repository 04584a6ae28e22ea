import { afterAll, beforeAll, expect, test } from 'vitest'
import type { DesignRecord } from '../../src/model/documents/records.ts'
import type { Stage } from '../../src/model/documents/types.ts'
import { inLongForm } from './longForm.ts'
import { openWorld, shownPoints, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

/** Every stage once per piece and very wide, and a dozen more after the last. */
function slow(stages: Stage[]): Stage[] {
  const more = Array.from({ length: 12 }, (_, i) => ({
    id: `more-${i}`,
    name: `More ${i + 1}`,
    after: [i === 0 ? (stages.at(-1)?.id ?? 'drive') : `more-${i - 1}`],
  }))
  const duration = (i: number) => ({ kind: 'lognormal', median: 1 + i / 10, spread: 3 }) as const
  return [...stages, ...more].map((stage, i) => ({ ...stage, each: true, duration: duration(i) }))
}

/** Carries 100, each of whose pieces takes stages of a very wide log-normal: even the coarse plan exceeds its budget. */
async function saveHauler(): Promise<void> {
  const { body } = await fetch(`${world.url}/api/documents/design/shearwater`).then((response) => response.json())
  const { robot, ...rest } = body as DesignRecord
  const score = Object.fromEntries(
    Object.entries(robot.score).map(([goal, ways]) => [
      goal,
      ways.map((way) => ({ ...way, stages: slow('stages' in way ? way.stages : []) })),
    ]),
  )
  const hauler = { ...rest, robot: { ...robot, id: 'hauler', name: 'Hauler', score, carries: { buoy: 100 } } }
  const response = await fetch(`${world.url}/api/documents/design/hauler`, {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ base: null, body: hauler }),
  })
  expect(response.status).toBe(200)
}

test.runIf(inLongForm)(
  'a computation that would run for minutes ends with a sentence, the screen stays usable, and a smaller one works',
  async () => {
    await saveHauler()
    const page = await world.open('/designs/hauler')
    const sentence = page.getByText(
      /would take too long and was stopped after \d+ s; carrying fewer pieces .* smaller\./,
    )
    await sentence.first().waitFor({ timeout: 45_000 })
    await expect.poll(() => page.getByTestId('points').textContent()).toContain('…')
    // The same workers, renewed, answer what is made smaller.
    await page.getByText('The robot: name, size, drive, form, reliability').click()
    await page.locator('[data-place="robot/carries/buoy"]').last().fill('1')
    expect(await shownPoints(page)).toBeGreaterThan(5)
    await sentence.first().waitFor({ state: 'detached' })
    await page.getByRole('group', { name: 'Cycle strip' }).waitFor()
    await page.context().close()
  },
)

test('nothing went wrong in any page', () => {
  expect(world.errors).toEqual([])
})
