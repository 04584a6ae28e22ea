import { afterAll, beforeAll, expect, test } from 'vitest'
import type { DesignRecord } from '../../src/model/documents/records.ts'
import type { Robot } from '../../src/model/documents/types.ts'
import { sweep } from '../../src/model/timing/index.ts'
import { done } from '../model/timing/ask.ts'
import { motorPivotInput } from '../model/timing/inputs.ts'
import { wider } from './screens.ts'
import { openWorld, type World } from './world.ts'

let world: World
beforeAll(async () => {
  world = await openWorld()
})
afterAll(() => world.close())

const address = () => `${world.url}/api/documents/design/kittiwake`
const stored = async (): Promise<{ revision: number; body: DesignRecord }> =>
  fetch(address()).then((answer) => answer.json())

/** The demo's design with an arm that the last stage of each scoring trip follows. */
async function withArm(): Promise<void> {
  const { revision, body } = await stored()
  const score: Robot['score'] = Object.fromEntries(
    Object.entries(body.robot.score).map(([id, entries]) => [
      id,
      entries.map((trip) => {
        if (!('stages' in trip)) return trip
        const last = { ...trip.stages.at(-1)!, hardware: { mechanism: 'arm', follows: true } }
        return { ...trip, stages: [...trip.stages.slice(0, -1), last] }
      }),
    ]),
  )
  const arm = { id: 'arm', name: 'Arm', calculator: 'pivot' as const, input: motorPivotInput }
  const mechanisms = [arm, ...(body.robot.mechanisms ?? [])]
  const next = { ...body, robot: { ...body.robot, score, mechanisms } }
  const answer = await fetch(address(), {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ base: revision, body: next }),
  })
  expect(answer.status, await answer.text()).toBe(200)
}

test('reductions are tried out with their points, read off by keys, and one is taken over in one step of undo', async () => {
  await withArm()
  const page = await world.open('/designs/kittiwake')
  // Stages that were saved with other times than their hardware gives: said, mended, and undone in one step.
  const behind = page.getByRole('alert').filter({ hasText: 'Times that no longer agree with their hardware' })
  await behind
    .getByText(/^‘.+’ has [\d.]+\ss, ‘Arm’ gives [\d.]+\ss\.$/)
    .first()
    .waitFor()
  await behind.getByRole('button', { name: 'Take the hardware’s times over' }).click()
  await behind.waitFor({ state: 'detached' })
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await behind.waitFor()
  await page.getByRole('button', { name: 'Open ‘Arm’' }).click()
  const search = page.locator('.design-search')
  await search.locator('summary').first().click()

  const motors = [1, 2]
  const reductions = { low: 27, high: 240, count: 100 }
  const found = sweep({
    calculator: 'pivot',
    input: motorPivotInput,
    reductions,
    motors,
    limits: { sourceCurrent: 60 },
  })
  const best = found.best!
  const shown = String(Number(best.reduction.toPrecision(3)))

  const limit = search.getByLabel('Most current of the battery')
  await limit.fill('sixty')
  await search.getByText('‘sixty’ is not a current', { exact: false }).waitFor()
  await limit.fill('60')
  const motor = found.best!.motors === 1 ? '1 motor' : '2 motors'
  await search.getByText(`Quickest within the limits: a reduction of ${shown} with ${motor}`).waitFor()

  await search.getByRole('button', { name: 'Compute points per match' }).click()
  await search.getByText(/^Most points within the limits/).waitFor()
  await search.getByRole('button', { name: 'Stop' }).waitFor({ state: 'detached' })
  await search.getByText('Numbers as a table').click()
  const cells = await search.locator('tbody tr').first().locator('th, td').allTextContents()
  expect([cells[0], cells[1], cells[2], cells[6]]).toEqual(['1', '27', '–', 'no'])

  const slider = search.getByLabel('Reduction read off')
  await search.getByLabel('With', { exact: true }).selectOption('1')
  await slider.focus()
  await page.keyboard.press('Home')
  await search.getByText('A reduction of 27 with 1 motor can not do it:').waitFor()
  expect(await search.getByRole('button', { name: 'Take this reduction over' }).isDisabled()).toBe(true)
  await page.keyboard.press('End')
  await page.keyboard.press('ArrowLeft')
  const next = found.points.filter((point) => point.motors === 1).at(-2)!
  const taken = Number(next.reduction.toPrecision(3))
  await search.getByText(`A reduction of ${taken} with 1 motor:`).waitFor()

  await search.getByRole('button', { name: 'Take this reduction over' }).click()
  await search.getByText(`Now: a reduction of ${taken} with 1 motor`).waitFor()
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await search.getByText('Now: a reduction of 80 with 1 motor').waitFor()
  await page.getByRole('button', { name: 'Redo', exact: true }).click()
  await search.getByText(`Now: a reduction of ${taken} with 1 motor`).waitFor()
  await page.setViewportSize({ width: 360, height: 800 })
  expect(await wider(page)).toBe(0)
  await page.getByRole('button', { name: 'Save', exact: true }).click()
  await page.getByText(/^Saved as revision/).waitFor()
  const { robot } = (await stored()).body
  expect(robot.mechanisms![0]!.input).toMatchObject({ reduction: taken, motors: 1, mass: motorPivotInput.mass })
  const trip = Object.values(robot.score)[0]![0]!
  const geared = { ...motorPivotInput, reduction: taken }
  const duration = 'stages' in trip ? trip.stages.at(-1)!.duration : null
  const own = done('pivot', geared).duration
  if (duration?.kind !== 'range' || own.kind !== 'range') throw new Error('no ranges')
  // Two engines' cosines differ in the last digit.
  expect(duration.likely).toBeCloseTo(own.likely, 9)
  expect(duration.high).toBeCloseTo(own.high, 9)
  expect(world.errors).toEqual([])
})
