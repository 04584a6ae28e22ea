import type { Sibling } from '../scores/index.ts'
import { follow, onTurn, type Selection } from '../selection/index.ts'
import { OwnOrders } from './orders.ts'

export interface WaitingRequest {
  sibling: Sibling
  selection: Selection
  us: string
  runs: number
  seed: number
}

export interface Waiting {
  team: string
  /** Chance that it is still free at our next turn, and its standard error by the runs. */
  chance: number
  error: number
}

/** Who will still be there at our next turn, or after the selection where we have none; whoever is free now, likeliest first. */
export function stillFree({ sibling, selection, us, runs, seed }: WaitingRequest): Waiting[] {
  const { seeds } = selection.state
  const candidates = selection.state.free.filter((team) => team !== us)
  const orders = new OwnOrders(sibling, seeds, seed)
  const counts = new Map(candidates.map((team) => [team, 0]))
  const ours = onTurn(selection.state, us)
  for (let run = 0; run < runs; run++) {
    let waits = false
    const then = follow(selection, (state) => {
      if (onTurn(state, us)) {
        if (!ours || waits) return null
        // What we take now is left open: somebody whom nobody else would take.
        waits = true
        return last(state.free, sibling)
      }
      const alliance = state.turn?.alliance as number
      const free = state.free.filter((team) => team !== us)
      return orders.best(free, { run, alliance })
    })
    for (const team of then.state.free) if (counts.has(team)) counts.set(team, (counts.get(team) as number) + 1)
  }
  // Whom we take in place of nobody is not gone.
  const dummy = ours ? last(candidates, sibling) : null
  return candidates
    .map((team): Waiting => {
      const count = team === dummy ? runs : (counts.get(team) as number)
      const near = (count + 2) / (runs + 4)
      return { team, chance: count / runs, error: Math.sqrt((near * (1 - near)) / (runs + 4)) }
    })
    .sort((a, b) => b.chance - a.chance)
}

function last(teams: readonly string[], sibling: Sibling): string | null {
  const mean = (team: string) => sibling.rating(team).points.reduce((sum, own) => sum + own, 0)
  return teams.reduce<string | null>((least, team) => (least === null || mean(team) < mean(least) ? team : least), null)
}
