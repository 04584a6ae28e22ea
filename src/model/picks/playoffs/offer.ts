import type { Strengths } from '../order/index.ts'
import { allianceOf, bestOf, follow, membersOf, type Selection, type SelectionStep } from '../selection/index.ts'
import { OwnOrders } from '../waiting/index.ts'
import { bracketOf, type Format } from './bracket.ts'
import { countedError } from './chances.ts'
import { playBracket, TieLuck } from './play.ts'

export interface OfferRequest {
  strengths: Strengths
  /** The alliance whose turn it is invites us. */
  selection: Selection
  us: string
  /** What we go by where we invite ourselves: of a pick order. */
  worth: ReadonlyMap<string, number>
  format: Format
  runs: number
  seed: number
}

export interface Offer {
  /** Chance to win the event when we accept and when we decline, with their standard errors. */
  accept: { wins: number; error: number }
  decline: { wins: number; error: number /** How often we are in an alliance at all. */; plays: number }
  /** Accepting less declining, in the same luck, and its standard error. */
  difference: { wins: number; error: number }
}

/** Accept or decline: the selection gone on with both ways, others inviting by orders of their own, and the playoffs after it. */
export function compareOffer(request: OfferRequest): Offer {
  const { selection, us, runs, seed, strengths } = request
  const orders = new OwnOrders(strengths.sibling, selection.state.seeds, seed)
  const sum = { accept: 0, decline: 0, plays: 0, squares: 0 }
  for (let run = 0; run < runs; run++) {
    const accept = winsAfter(request, { kind: 'accepts', team: us }, { orders, run })
    const decline = winsAfter(request, { kind: 'declines', team: us }, { orders, run })
    const difference = Number(accept === true) - Number(decline === true)
    sum.accept += Number(accept === true)
    sum.decline += Number(decline === true)
    sum.plays += Number(decline !== null)
    sum.squares += difference * difference
  }
  const mean = (sum.accept - sum.decline) / runs
  return {
    accept: { wins: sum.accept / runs, error: countedError(sum.accept, runs) },
    decline: { wins: sum.decline / runs, error: countedError(sum.decline, runs), plays: sum.plays / runs },
    difference: { wins: mean, error: Math.sqrt(((sum.squares + 1) / (runs + 1) - mean * mean) / runs) },
  }
}

/** Whether we win the event; null where we are in no alliance. */
function winsAfter(
  { selection, strengths, us, worth, format, seed }: OfferRequest,
  step: SelectionStep,
  { orders, run }: { orders: OwnOrders; run: number },
): boolean | null {
  const places = new Map([...worth].map(([team, own]) => [team, -own]))
  const end = follow(selection.take(step), (state) => {
    const number = state.turn?.alliance as number
    const free = state.free.filter((team) => team !== us)
    return allianceOf(state, us)?.number === number
      ? bestOf(free, places)
      : orders.best(free, { run, alliance: number })
  })
  const own = allianceOf(end.state, us)
  if (!own) return null
  const alliances = end.state.alliances.map(membersOf)
  const { sibling } = strengths
  const draw = run % sibling.draws
  const traits = alliances.map((members) => sibling.at(strengths.playing(members), draw))
  const chance = (a: number, b: number) => {
    const [first, second] = [traits[a - 1], traits[b - 1]]
    return first && second ? (sibling.chances(first, second)[0] as number) : 0.5
  }
  const there = alliances.filter((members) => members.length > 0).length
  const ties = bracketOf({ ...format, alliances: there })
  return playBracket(ties, chance, { luck: new TieLuck(seed), run }).winner === own.number
}
