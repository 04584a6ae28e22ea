import { ownTeam, seededEvent } from '../../seed/event/index.ts'
import { game } from '../../seed/game.ts'
import { thinned } from '../../src/api/pack/thinned.ts'
import type { BriefingRequest } from '../../src/model/briefing/index.ts'
import { eventEstimates } from '../../src/model/scouting/estimates/index.ts'
import { observedRobot } from '../../src/model/scouting/observed/index.ts'

/** The next match of the demo's own team, with its robots as they were seen. */
export function robotsOfDemo(): BriefingRequest {
  const { event, matches, results, records } = seededEvent()
  const watched = records.flatMap((row) =>
    row.kind === 'observation' && row.body.match !== null ? [{ observation: row.body, team: row.body.team }] : [],
  )
  const teams = event.teams.map(({ team }) => team)
  const estimates = eventEstimates({ game, teams, matches, watched, changes: [], visits: [] })
  const over = new Set(results.map(({ match }) => match))
  const next = matches.find(
    ({ id, red, blue }) => !over.has(id) && [...red, ...blue].some(({ team }) => team === ownTeam),
  )!
  const ours = next.red.some(({ team }) => team === ownTeam) ? next.red : next.blue
  const of = (side: typeof ours) =>
    side.map(({ team }) => thinned(observedRobot(estimates, team, { draws: 200 }).option))
  return {
    ...{ game, level: event.level, seed: 1, slowing: 0.25 },
    ...{ ours: of(ours), theirs: of(ours === next.red ? next.blue : next.red) },
  }
}
