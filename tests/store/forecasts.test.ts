import { expect, test } from 'vitest'
import { forecastId } from '../../src/store/index.ts'
import type { By } from '../../src/store/types.ts'
import { match, result } from '../model/event/matches.ts'
import { forecast } from '../model/scouting/record/forecasts.ts'
import { scratchStore } from './scratch.ts'

const by: By = { person: null, device: null }
const event = 'harbour-days'
const put = [match(1, 'A B C', 'D E F'), match(2, 'F E D', 'C B A')]
const [first, second] = put.map(({ id }) => id) as [string, string]

/** A clock that is put forward by hand, and two workspaces with the same schedule. */
async function opened() {
  let minute = 0
  const clock = { now: () => new Date(Date.UTC(2031, 2, 15, 10, minute)), pass: () => void minute++ }
  const { store } = await scratchStore({ now: clock.now })
  const of = async (name: string) => {
    const team = store.workspace(await store.ensureWorkspace(name))
    await team.events.edit(event, { put, remove: [], mark: (await team.events.matches(event)).mark, by })
    return team
  }
  return { clock, team: await of('team'), other: await of('other') }
}

const shown = (of: string, from: string) => {
  const { id: _, madeAt: __, ...rest } = forecast(of, 0)
  return { ...rest, from: from.repeat(64) }
}

test('A forecast is kept with its time, once for the same records, and stays as it was', async () => {
  const { clock, team, other } = await opened()
  const keep = (from: string) => team.forecasts.keep(event, [shown(first, from)])
  const [one] = await keep('a')
  expect(one!.fresh).toBe(true)
  const kept = one!.forecast
  clock.pass()
  // Asked for again from the same records, by two at the same time.
  const again = await Promise.all([1, 2].map(() => keep('a')))
  const same = [{ forecast: kept, fresh: false }]
  expect(again).toEqual([same, same])
  const newer = (await keep('b'))[0]!.forecast
  clock.pass()
  // Back to what it was made from before: that is what is shown now, so that it is kept again.
  const back = (await keep('a'))[0]!.forecast
  expect(await team.forecasts.of(event, first)).toEqual([kept, newer, back])
  expect([kept, newer, back].map((each) => each.madeAt)).toEqual(
    [0, 1, 2].map((minute) => `2031-03-15T10:0${minute}:00.000Z`),
  )
  // Its id is the hash of its content, so that a change would show.
  const { id, ...content } = back
  expect(forecastId(content)).toBe(id)
  expect(forecastId({ ...content, body: { ...content.body, win: 0.46 } })).not.toBe(id)
  expect(await other.forecasts.of(event)).toEqual([])
  expect(Object.getOwnPropertyNames(Object.getPrototypeOf(team.forecasts)).sort()).toEqual([
    'constructor',
    'count',
    'keep',
    'of',
  ])
})

test('Nothing is kept behind a result, nor of a match that is not in the schedule; a result’s corrections do not move its time', async () => {
  const { clock, team } = await opened()
  const enter = async (base: number, red: number | null) => {
    clock.pass()
    const told = red === null ? null : result(first, [red, 20])
    const entered = await team.events.enter(event, [{ match: first, base, matchRevision: 1, result: told }], by)
    expect(entered).toHaveProperty('applied')
  }
  const since = async () => (await team.events.standing(event)).map((each) => each.since.slice(14, 16))
  await team.forecasts.keep(event, [shown(first, 'a')])
  await enter(0, 30)
  const kept = await team.forecasts.keep(event, [shown(first, 'b'), shown(second, 'b'), shown('nothing', 'b')])
  expect(kept.map((each) => each?.forecast.match ?? null)).toEqual([null, second, null])
  await enter(1, 31)
  expect(await since()).toEqual(['01'])
  // Taken back it was no result of this match: what is shown until there is one counts.
  await enter(2, null)
  expect(await since()).toEqual([])
  expect((await team.forecasts.keep(event, [shown(first, 'b')]))[0]!.forecast.madeAt).toBe('2031-03-15T10:03:00.000Z')
  await enter(3, 31)
  expect(await since()).toEqual(['04'])
  expect((await team.forecasts.of(event)).map((each) => each.match)).toEqual([first, second, first])
})
