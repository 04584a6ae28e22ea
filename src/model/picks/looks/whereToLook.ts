import { type Breaks, overlong } from '../../event/assign/stints.ts'
import { afterLook, knowledgeGradient, type Prospect } from './gradient.ts'

/** A match to come, in the order of play. */
export interface LookMatch {
  id: string
  teams: readonly string[]
  /** Before it there is time enough for everybody to rest. */
  pause: boolean
}

export interface LookRequest extends Breaks {
  prospects: readonly Prospect[]
  matches: readonly LookMatch[]
  /** Who is free to look, and the matches in which each is busy: these count for the breaks. */
  people: readonly { person: string; busy?: ReadonlySet<string> }[]
  /** Looks that are planned already, whoever makes them. */
  planned?: readonly { match: string; team: string }[]
}

export interface Look {
  match: string
  team: string
  person: string
  /** What it is worth when those before it in the list are made. */
  worth: number
}

export interface LookPlan {
  /** In the order of the matches. */
  looks: Look[]
  /** What one look at each team is worth before any of these, the most first. */
  teams: { team: string; worth: number }[]
}

/**
 * Where to look next: again and again the look that is worth most, after what the looks before it will have told, as long as somebody
 * is free for it and keeps the breaks. Greedy, so that a pair of looks which are only worth something together can be missed.
 */
export function whereToLook({ prospects, matches, people, planned = [], longest, rest }: LookRequest): LookPlan {
  const pauses = matches.map(({ pause }) => pause)
  const watched = people.map(({ busy }) => matches.map(({ id }) => busy?.has(id) ?? false))
  const taken = new Set(planned.map(({ match, team }) => `${match}\n${team}`))
  let beliefs = prospects.map((each) =>
    planned.filter(({ team }) => team === each.team).reduce((belief) => afterLook(belief), each),
  )
  const teams = knowledgeGradient(beliefs).map((worth, k) => ({ team: prospects[k]?.team as string, worth }))
  const looks: (Look & { at: number })[] = []
  for (;;) {
    const worth = knowledgeGradient(beliefs)
    const next = bestOf(worth, (k) => {
      const { team } = prospects[k] as Prospect
      return matches.flatMap(({ id, teams: six }, at) => {
        if (!six.includes(team) || taken.has(`${id}\n${team}`)) return []
        const person = whoIsFree(watched, at, { pauses, breaks: { longest, rest } })
        return person === null ? [] : [{ at, person }]
      })[0]
    })
    if (!next) break
    const { k, found, worth: own } = next
    const { id } = matches[found.at] as LookMatch
    const { team } = prospects[k] as Prospect
    looks.push({ match: id, team, person: people[found.person]?.person as string, worth: own, at: found.at })
    ;(watched[found.person] as boolean[])[found.at] = true
    taken.add(`${id}\n${team}`)
    beliefs = beliefs.map((belief, place) => (place === k ? afterLook(belief) : belief))
  }
  return {
    looks: looks.sort((a, b) => a.at - b.at).map(({ at: _, ...look }) => look),
    teams: teams.sort((a, b) => b.worth - a.worth),
  }
}

/** The look that is worth most of those for which something is found. */
function bestOf<Found>(worth: readonly number[], find: (k: number) => Found | undefined) {
  const order = worth.map((own, k) => ({ k, own })).sort((a, b) => b.own - a.own || a.k - b.k)
  for (const { k, own } of order) {
    // Below this a look changes no decision that anybody could see.
    if (!(own > 1e-9)) return null
    const found = find(k)
    if (found !== undefined) return { k, found, worth: own }
  }
  return null
}

/** Of those who are not in the match the one who has watched least so far, as long as no break is missed for it. */
function whoIsFree(
  watched: readonly boolean[][],
  at: number,
  { pauses, breaks }: { pauses: readonly boolean[]; breaks: Breaks },
): number | null {
  let best: number | null = null
  let least = Number.POSITIVE_INFINITY
  for (const [k, own] of watched.entries()) {
    if (own[at]) continue
    const load = own.filter(Boolean).length
    if (load >= least) continue
    const [before, after] = [own, own.with(at, true)].map((each) => overlong(each, pauses, breaks).length) as [
      number,
      number,
    ]
    if (after > before) continue
    best = k
    least = load
  }
  return best
}
