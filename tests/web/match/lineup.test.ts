import { expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import { firstChoice, rolesOf } from '../../../web/screens/match/lineup/roles.ts'

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
  const some = { settled: false, goals: ['piers', 'gantry'], finishes: ['davit'] }
  expect(said(hook, some)).toEqual(['piers+gantry > davit', 'piers > davit', 'gantry > davit'])
  expect(said(hook, { ...some, goals: [] })).toEqual([' > davit'])
  expect(rolesOf(hook, { ...some, settled: true }, game)).toEqual([hook.role])
  const skips = optionOf('puffin-skip')
  const own = said(skips, { settled: false, goals: ['lightship'], finishes: ['dry-dock'] })
  expect(own).toEqual(['lightship > '])
})
