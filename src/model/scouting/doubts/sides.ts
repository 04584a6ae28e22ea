import type { Game } from '../../documents/types.ts'
import { inOrder, voided } from '../../event/order.ts'
import { seatOf } from '../../event/seats.ts'
import { type Seen, seenByTeam, seenIn } from '../seen/index.ts'
import { type Alliance, alliances, type Match, type Observation, type ResultSide } from '../types.ts'
import { groupsOf } from './groups.ts'
import type { Category, DoubtsRequest } from './types.ts'

/** One record that counts, with the pieces that it scored by goal; null where nobody watched all of the match. */
export interface OneRecord {
  id: string
  scout: string
  match: string
  alliance: Alliance
  team: string
  pieces: number[] | null
  finish: string | null | undefined
  /** Its share in what was seen of its robot. */
  share: number
}

/** An alliance of a match whose result counts. */
export interface Checked {
  match: Match
  alliance: Alliance
  records: OneRecord[]
  /** By category; null where officials or scouts do not tell. */
  official: (number | null)[]
  scouted: (number | null)[]
}

export interface Sides {
  categories: Category[]
  /** Goals come first among the categories, so that a goal has the same place in both. */
  goals: string[]
  sides: Checked[]
  /** All that count, of matches without a result too. */
  records: OneRecord[]
}

/** @param goals ids, in the order of the numbers that are returned */
function piecesOf(seen: Seen, goals: readonly string[]): number[] | null {
  if (seen.absent) return goals.map(() => 0)
  const { autonomous, teleop } = seen
  if (!autonomous || !teleop) return null
  return goals.map((goal) => (autonomous[goal]?.scored ?? 0) + (teleop.goals[goal]?.scored ?? 0))
}

function autonomousOf({ goals, leave }: Game, { absent, autonomous, left }: Seen): number | null {
  if (absent) return 0
  if (!autonomous || (leave && left === null)) return null
  let points = left && leave ? leave.points : 0
  for (const { id, award } of goals) {
    const scored = autonomous[id]?.scored ?? 0
    // What a held goal pays depends on seconds, which nobody counted by robot.
    if (award.kind === 'hold' && scored > 0) return null
    if (award.kind === 'each') points += scored * award.auto
  }
  return points
}

function finishOf({ finishes }: Game, { absent, finish }: Seen): number | null {
  if (absent) return 0
  if (!finish) return null
  return finishes.find(({ id }) => id === finish.achieved)?.points ?? 0
}

const lookedAway = ({ timeline = [] }: Observation) => timeline.some(({ what }) => what === 'unseen')

function officialIn({ points, pieces }: ResultSide, category: Category): number | null {
  if (category.kind === 'pieces') return pieces ? (pieces[category.goal] ?? 0) : null
  return points[category.kind] ?? null
}

/** Results and records side by side, alliance by alliance in the order of play. Practice and voided plays have no side. */
export function sidesOf({ game, matches, results, watched, choices = [] }: DoubtsRequest): Sides {
  const goals = game.goals.map(({ id }) => id)
  const categories: Category[] = [
    ...goals.map((goal): Category => ({ kind: 'pieces', goal })),
    { kind: 'autonomous' },
    { kind: 'finishes' },
  ]
  const played = matches.filter(({ phase }) => phase !== 'practice').toSorted(inOrder)
  const byId = new Map(played.map((match) => [match.id, match]))
  const away = new Set(watched.flatMap(({ observation }) => (lookedAway(observation) ? [observation.id] : [])))
  const seen = seenByTeam({ game, matches, watched, choices })
  const ofRobot = new Map([...seen].flatMap(([team, all]) => all.map((one) => [`${one.match} ${team}`, one] as const)))

  const records = watched.flatMap(({ observation, team }): OneRecord[] => {
    const match = byId.get(observation.match ?? '')
    const seat = match && seatOf(match, team)
    const robot = ofRobot.get(`${observation.match} ${team}`)
    if (!match || !seat || !robot?.records.includes(observation.id)) return []
    const one = robot.records.length === 1 ? robot : seenIn(game, observation)
    return [
      {
        id: observation.id,
        scout: observation.scout,
        match: match.id,
        alliance: seat.alliance,
        team,
        pieces: away.has(observation.id) ? null : piecesOf(one, goals),
        finish: one.absent ? null : one.finish?.achieved,
        share: 1 / robot.records.length,
      },
    ]
  })
  const bySide = groupsOf(records, ({ match, alliance }) => `${match} ${alliance}`)

  const gone = voided(matches)
  const counted = new Map(results.map((result) => [result.match, result]))
  const sides = played.flatMap((match): Checked[] => {
    const result = counted.get(match.id)
    if (!result || gone.has(match.id)) return []
    return alliances.map((alliance): Checked => {
      const robots = match[alliance].flatMap(({ team, state }) => {
        const one = ofRobot.get(`${match.id} ${team}`)
        return one ? [one] : state === 'absent' ? [] : [null]
      })
      const amountOf = (one: Seen, category: Category): number | null => {
        if (category.kind === 'autonomous') return autonomousOf(game, one)
        if (category.kind === 'finishes') return finishOf(game, one)
        if (one.records.some((id) => away.has(id))) return null
        return piecesOf(one, goals)?.[goals.indexOf(category.goal)] ?? null
      }
      const scouted = categories.map((category) =>
        robots.reduce<number | null>((sum, one) => {
          const value = one && amountOf(one, category)
          return sum === null || value === null ? null : sum + value
        }, 0),
      )
      const official = categories.map((category) => officialIn(result[alliance], category))
      return { match, alliance, records: bySide.get(`${match.id} ${alliance}`) ?? [], official, scouted }
    })
  })
  return { categories, goals, sides, records }
}
