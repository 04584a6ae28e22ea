import { Playing, ratedTeam, samplePairings } from '../../src/model/picks/index.ts'
import { EventEstimates } from '../../src/model/scouting/estimates/index.ts'
import { game } from '../model/reference.ts'
import { seenOf, truths } from '../model/scouting/estimates/world.ts'

export { game }
export const level = 'district'

/** Estimates of an event of 60 teams, each seen in eight matches. Always the same. */
export function storedEstimates() {
  const shape = { teams: 60, matches: 8, seed: 12, volley: 3 }
  const all = truths(shape)
  const names = all.map(({ team }) => team)
  return { names, estimates: new EventEstimates({ game, teams: names, seen: seenOf(all, shape) }) }
}

/** The same as it is stored: estimates made, robots made of them. */
export function storedEvent() {
  const { names, estimates } = storedEstimates()
  const teams = names.map((team) => ratedTeam(estimates, { team }))
  return { teams, names, playing: new Playing({ game, level, teams }) }
}

/** 80 matches to come among all teams. */
export const toCome = (teams: ReturnType<typeof storedEvent>['teams']) =>
  samplePairings({ teams, seed: 8, pairings: 80, strongest: teams.length })
