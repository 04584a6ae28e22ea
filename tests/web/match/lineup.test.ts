import { expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import { firstChoice, rolesOf, windowOf } from '../../../web/screens/match/lineup/roles.ts'

const { game } = breakwater
const hook = optionOf('shearwater-best')
const said = (option: typeof hook, choice: Parameters<typeof rolesOf>[1]) =>
  rolesOf(option, choice, game).map(({ goals, finishes }) => `${goals.join('+')} > ${finishes.join('|')}`)

test('a robot may take each selection of its goals with each of its finishes, its own role first', () => {
  const all = said(hook, firstChoice(hook, game))
  // Seven selections of three goals, with either finish; its own role leaves the finish open.
  expect(all.length).toBe(15)
  expect(all[0]).toBe('piers+gantry+lightship > dry-dock|davit')
  expect(new Set(all).size).toBe(15)
  expect(all).toContain('gantry > davit')
})

test('what is not ticked is in no role, a settled robot keeps its own, and who plays to the buzzer takes no finish', () => {
  const some = { ...firstChoice(hook, game), goals: ['piers', 'gantry'], finishes: ['davit'] }
  expect(said(hook, some)).toEqual(['piers+gantry > davit', 'piers > davit', 'gantry > davit'])
  expect(said(hook, { ...some, goals: [] })).toEqual([' > davit'])
  expect(rolesOf(hook, { ...some, settled: true }, game)).toEqual([hook.role])
  const skips = optionOf('puffin-skip')
  const own = said(skips, { ...firstChoice(skips, game), goals: ['lightship'], finishes: ['dry-dock'] })
  expect(own).toEqual(['lightship > '])
})

test('a robot may mark any of the ticked opponents, or nobody, with each selection; its own role comes first where it may', () => {
  const first = firstChoice(hook, game)
  expect(first.marks).toEqual(['nobody'])
  const some = { ...first, goals: ['piers'], finishes: ['davit'], from: '60', until: '20.5' }
  const marking = (choice: typeof some, option = hook) => rolesOf(option, choice, game).map(({ defend }) => defend)
  const window = { from: 60, until: 20.5 }
  expect(marking({ ...some, marks: ['nobody', '0', '2'] })).toEqual([
    null,
    { mark: 0, ...window },
    { mark: 2, ...window },
  ])
  expect(marking({ ...some, marks: ['1'] })).toEqual([{ mark: 1, ...window }])
  // Nothing ticked is nobody: a robot that may do nothing at all would leave no line-up.
  expect(marking({ ...some, marks: [] })).toEqual([null])
  const marker = { ...hook, role: { ...hook.role, defend: { mark: 1 as const, from: 90, until: 30 } } }
  const its = firstChoice(marker, game)
  expect(its).toMatchObject({ marks: ['1'], from: '90', until: '30' })
  expect(rolesOf(marker, { ...its, marks: ['nobody', '1'] }, game)[0]).toEqual(marker.role)
  expect(rolesOf(marker, { ...its, marks: ['nobody'] }, game).every(({ defend }) => defend === null)).toBe(true)
})

test('a window of time is read as it is typed, and is none the other way round or beyond teleop', () => {
  const choice = firstChoice(hook, game)
  expect(windowOf(choice, game)).toEqual({ from: 135, until: 30 })
  expect(windowOf({ ...choice, from: '12,5', until: '3' }, game)).toEqual({ from: 12.5, until: 3 })
  for (const [from, until] of [
    ['30', '60'],
    ['30', '30'],
    ['136', '0'],
    ['soon', '0'],
    ['', '0'],
  ] as const)
    expect(windowOf({ ...choice, from, until }, game)).toBeNull()
})
