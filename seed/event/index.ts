import type { EventRecord, Match, Result, Row, Side, Slot } from '../../src/model/scouting/types.ts'
import { game } from '../game.ts'
import { type PlayedMatch, play } from './played.ts'
import { ownTeam } from './practice.ts'
import { records } from './records.ts'
import { schedule, timeAt } from './schedule.ts'
import { teams } from './teams.ts'

export type { Performance, PlayedMatch } from './played.ts'
export { ownTeam } from './practice.ts'
export { type Strength, strengths } from './teams.ts'

/** The invented event of the invented season. */
export const event: EventRecord = {
  format: 1,
  id: 'breakwater-spring',
  name: 'Breakwater Spring Meeting',
  game: game.id,
  level: 'local',
  teams,
  playoff: { format: 'double', alliances: 6, size: 4 },
  startsOn: '2031-03-15',
  own: ownTeam,
}

const seed = 20_310_315

/** How many matches are over when the demo begins. */
const over = 23
/** The match that was played again, where a robot did not come, and where one was disqualified. */
const replayed = 6
const absentIn = 9
const disqualifiedIn = 14

function marked(match: Match, alliance: 'red' | 'blue', state: Slot['state']): Match {
  const side = match[alliance].map((slot, index) => (index === 1 ? { ...slot, state } : slot)) as Side
  return { ...match, [alliance]: side }
}

export interface SeededEvent {
  event: EventRecord
  matches: Match[]
  results: Result[]
  /** What every robot did in the matches that are over: for records that agree with the results. */
  played: PlayedMatch[]
  /** What scouts recorded of them. */
  records: Row[]
}

/**
 * The event in the middle of its day: 46 matches and a replay, the first half played. One team is a surrogate once, one robot does not come
 * to its match, one is disqualified, and the result of the replayed match is voided. Always the same; some milliseconds.
 */
export function seededEvent(): SeededEvent {
  const matches = schedule().map((match) => {
    if (match.number === absentIn) return marked(match, 'blue', 'absent')
    return match.number === disqualifiedIn ? marked(match, 'red', 'disqualified') : match
  })
  const first = matches[replayed - 1]!
  const again: Match = { ...first, id: `${first.id}-2`, play: 2, voids: first.id, time: timeAt(over * 7.5 + 5) }
  const played = [...matches.slice(0, over), again].map((match) => play(match, seed))
  const results = played.map(({ result }) => result)
  return { event, matches: [...matches, again], results, played, records: records(event.id, played) }
}
