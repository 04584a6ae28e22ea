import { EventEstimates } from '../../src/model/scouting/estimates/index.ts'
import { seenByTeam } from '../../src/model/scouting/seen/index.ts'
import type { Match, Observation, Side } from '../../src/model/scouting/types.ts'
import { game } from '../model/reference.ts'
import { Chance, play, record, truths } from '../model/scouting/estimates/world.ts'
import { type BenchEntry, milliseconds } from './entry.ts'

const teamCount = 60
const matchCount = 100

/** An event of 60 teams and 100 matches, with a timeline of every robot in every match. */
function event() {
  const all = truths({ teams: teamCount, matches: 10, seed: 12, volley: 3 })
  const chance = new Chance(12, 1)
  const matches = Array.from({ length: matchCount }, (_, m): Match => {
    const six = Array.from({ length: 6 }, (_, k) => all[(m * 6 + k) % teamCount]!)
    const side = (from: number) =>
      six.slice(from, from + 3).map(({ team }) => ({ team, counts: true, state: 'played' as const })) as Side
    return { id: `m${m}`, phase: 'qualification', number: m + 1, play: 1, red: side(0), blue: side(3) }
  })
  const watched = matches.flatMap((match) =>
    [...match.red, ...match.blue].map(({ team }) => {
      const truth = all.find((each) => each.team === team)!
      return { team, observation: record(team, match.id, play(truth, chance)) }
    }),
  )
  return { matches, watched, teams: all.map(({ team }) => team) }
}

type Watched = { team: string; observation: Observation }

/** What a list of all teams shows: pieces and points with their intervals. */
function overview(estimates: EventEstimates, teams: readonly string[]): number {
  let sum = 0
  for (const team of teams) {
    const { attempts, points } = estimates.team(team)
    sum += attempts.interval80[0] + points.interval95[1]
  }
  return sum
}

const entries: BenchEntry[] = [
  {
    // From nothing: 600 records to what a list of all teams shows.
    name: 'estimate.event',
    unit: 'ms',
    better: 'lower',
    runs: 9,
    open: () => {
      const { matches, watched, teams } = event()
      const run = () => {
        const seen = seenByTeam({ game, matches, watched })
        overview(new EventEstimates({ game, teams, seen }), teams)
      }
      run()
      return { run: () => milliseconds(run) }
    },
  },
  {
    // One more record of one team: all teams' numbers move with it, and the list is told anew.
    name: 'estimate.add',
    unit: 'ms',
    better: 'lower',
    runs: 15,
    open: () => {
      const { matches, watched, teams } = event()
      const byTeam = new Map<string, Watched[]>()
      for (const each of watched) byTeam.set(each.team, [...(byTeam.get(each.team) ?? []), each])
      const seen = seenByTeam({ game, matches, watched: watched.slice(0, -15) })
      let turn = 0
      const run = () => {
        const team = teams[turn++ % teams.length]!
        const own = byTeam.get(team)!.slice(0, 9 + (turn % 2))
        const changed = new Map(seen).set(team, seenByTeam({ game, matches, watched: own }).get(team)!)
        overview(new EventEstimates({ game, teams, seen: changed }), teams)
      }
      for (let warm = 0; warm < 5; warm++) run()
      return { run: () => milliseconds(run) }
    },
  },
]

export default entries
