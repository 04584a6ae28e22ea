import { createHash } from 'node:crypto'
import { writeFileSync } from 'node:fs'
import { simulate } from '../../src/model/match/index.ts'
import { eventEstimates } from '../../src/model/scouting/estimates/index.ts'
import { observedRobot } from '../../src/model/scouting/observed/index.ts'
import { basisOf, forecastBody, forecastVersion } from '../../src/model/scouting/record/index.ts'
import type { Match, Row } from '../../src/model/scouting/types.ts'
import type { NewForecast } from '../../src/store/types.ts'
import { game } from '../game.ts'
import { seededEvent } from './index.ts'

/** The lead begins with forecasts when so many matches have been seen. */
export const seenFirst = 3

/** As the server forecasts (src/api/estimates/forecast.ts). */
const [draws, replicates, seed] = [200, 4000, 1]

const { event, matches, played, records } = seededEvent()
const teams = event.teams.map(({ team }) => team)

/** Nobody knew beforehand who would not come. */
const coming = (match: Match): Match => {
  const side = (slots: Match['red']) => slots.map((slot) => ({ ...slot, state: 'expected' })) as unknown as Match['red']
  return { ...match, red: side(match.red), blue: side(match.blue) }
}

/** The forecast of the match that was played as number `place`, counted from 0, from what was recorded of those before it. */
export function forecastBefore(place: number): NewForecast {
  const before = played.slice(0, place)
  const seen = new Set(before.map(({ match }) => match.id))
  const own = played[place]!.match
  // A replay stands in the schedule once the first half is over.
  const schedule = matches
    .filter(({ id, voids }) => voids === undefined || seen.has(id) || id === own.id)
    .map((match) => (seen.has(match.id) ? match : coming(match)))
  const match = schedule.find(({ id }) => id === own.id)!
  const known = records.filter(
    (row) => row.kind === 'visit' || (row.kind === 'observation' && seen.has(row.body.match ?? '')),
  )
  const watched = known.flatMap((row) =>
    row.kind === 'observation' ? [{ observation: row.body, team: row.body.team }] : [],
  )
  const visits = known.flatMap((row) => (row.kind === 'visit' ? [row.body] : []))
  const results = before.map(({ result }) => result)
  const estimates = eventEstimates({ game, teams, matches: schedule, watched, changes: [], visits })
  const robots = [...match.red, ...match.blue].map(({ team }) => observedRobot(estimates, team, { draws }).option)
  const report = simulate({
    game,
    level: event.level,
    ours: robots.slice(0, 3),
    theirs: robots.slice(3),
    replicates,
    seed,
  })
  const watchedTeams = new Set(watched.map(({ team }) => team))
  const neverSeen = [...match.red, ...match.blue].map(({ team }) => team).filter((team) => !watchedTeams.has(team))
  const basis = basisOf({
    ...{ rules: [game.id, 1], level: event.level, teams, matches: schedule, results },
    records: known.map((row: Row) => ({ id: row.id, team: 'team' in row.body ? row.body.team : null })),
  })
  return {
    match: match.id,
    from: createHash('sha256').update(basis).digest('hex'),
    version: forecastVersion,
    body: forecastBody({ match, report, records: watched.length, neverSeen, matches: schedule, results }),
  }
}

/** Computes them anew and keeps them beside the seed: `npx tsx seed/event/computeForecasts.ts`, half a minute. */
if (process.argv[1] === new URL(import.meta.url).pathname) {
  const all = played.slice(seenFirst).map((_, k) => forecastBefore(seenFirst + k))
  writeFileSync(new URL('forecasts.json', import.meta.url), `${JSON.stringify(all)}\n`)
}
