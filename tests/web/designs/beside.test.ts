import { describe, expect, test } from 'vitest'
import { breakwater, optionOf } from '../../../seed/index.ts'
import { pointsWords, secondsApart, timeWords } from '../../../web/screens/designs/besideWords.ts'
import { type Cycle, sameTrip } from '../../../web/screens/designs/cycle.ts'

const nbsp = '\u00a0'

describe('what two designs differ by', () => {
  test('seconds of the whole, and of each leg: 9.5 against 8.3', () => {
    const found = timeWords(
      {
        name: 'Tern',
        sections: [
          { name: 'Collect', mean: 4 },
          { name: 'Score', mean: 5.5 },
        ],
      },
      {
        name: 'Gull',
        sections: [
          { name: 'Collect', mean: 4.02 },
          { name: 'Score', mean: 4.28 },
        ],
      },
    )
    expect(found).toEqual([
      `Tern takes 9.5${nbsp}s on average, Gull 8.3${nbsp}s: 1.2${nbsp}s less.`,
      `Of that Collect: the same time, to 0.1 s; Score: 1.2${nbsp}s less.`,
    ])
  })
  test('a leg alone has no parts', () => {
    const one = (name: string, mean: number) => ({ name, sections: [{ name: 'Score', mean }] })
    expect(timeWords(one('Tern', 4), one('Gull', 6))).toEqual([
      `Tern takes 4.0${nbsp}s on average, Gull 6.0${nbsp}s: 2.0${nbsp}s more.`,
    ])
    expect(secondsApart(3, 3.049)).toBe('the same time, to 0.1 s')
  })
  test('points with their sign, and none where there is no difference to see', () => {
    const [tern, gull] = [
      { name: 'Tern', points: 57.4 },
      { name: 'Gull', points: 55.3 },
    ]
    expect(pointsWords(tern, gull)).toBe('Points a match: Tern 57.4, Gull 55.3: \u22122.1 for Gull.')
    expect(pointsWords(tern, { ...gull, points: 57.44 })).toBe('Both bring 57.4 expected points a match, to 0.1.')
  })
})

describe('the same trip by another robot', () => {
  const { game } = breakwater
  const option = optionOf('shearwater-best')
  const cycle: Cycle = {
    source: 'channel',
    sourceSpot: 'channel.ramp',
    load: 1,
    goal: 'gantry',
    entry: 1,
    goalSpot: 'gantry.mark',
  }
  test('is itself for the same robot', () => {
    expect(sameTrip(game, option, cycle)).toEqual(cycle)
  })
  test('is done in the way that the other robot has, from a spot of that way, with what it carries', () => {
    const [hang] = option.robot.score['gantry']!
    const robot = { ...option.robot, score: { ...option.robot.score, gantry: [hang!] } }
    expect(sameTrip(game, { ...option, robot }, { ...cycle, load: 3 })).toMatchObject({
      entry: 0,
      goalSpot: 'gantry.foot',
      load: 1,
    })
  })
  test('is none where the other robot does not score there, or its way to play leaves it out', () => {
    const { gantry: _, ...score } = option.robot.score
    expect(sameTrip(game, { ...option, robot: { ...option.robot, score } }, cycle)).toBeNull()
    const role = { ...option.role, goals: ['piers'] }
    expect(sameTrip(game, { ...option, role }, cycle)).toBeNull()
  })
})
