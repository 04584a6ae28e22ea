import { expect, it } from 'vitest'
import { ratedFrom, ratedTeam, ratingsOf } from '../../../src/model/picks/scores/index.ts'
import { EventEstimates } from '../../../src/model/scouting/estimates/index.ts'
import { game } from '../reference.ts'
import { seenOf, truths } from '../scouting/estimates/world.ts'

it('a rating and a robot that were made apart are the team that is made at once', () => {
  const shape = { teams: 6, matches: 3, seed: 5, volley: 3 }
  const all = truths(shape)
  const teams = all.map(({ team }) => team)
  const event = new EventEstimates({ game, teams, seen: seenOf(all, shape) })
  const team = teams[2]!
  const whole = ratedTeam(event, { team, draws: 400, robot: 200 })
  const [rating] = ratingsOf(event, [team])
  expect(ratedFrom(team, { rating: rating!, option: whole.option })).toEqual(whole)
  const odd = ratedTeam(event, { team, draws: 400, robot: 64 })
  expect(() => ratedFrom(team, { rating: rating!, option: odd.option })).toThrow('400 draws are no multiple')
})
