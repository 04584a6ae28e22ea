import type { Game } from '../../src/model/documents/types.ts'
import {
  type OrderRequest,
  pickOrder,
  playRound,
  refineTasks,
  roughOrder,
  roughWorth,
  Strengths,
  type WorkedOrder,
} from '../../src/model/picks/order/index.ts'
import { compareOffer, playoffChances, substitutions as threesOf } from '../../src/model/picks/playoffs/index.ts'
import {
  joined,
  type Lot,
  Playing,
  type RatedTeam,
  ratedFrom,
  Sibling,
  samplePairings,
  unpackRating,
} from '../../src/model/picks/scores/index.ts'
import { Selection, selectionAfter } from '../../src/model/picks/selection/index.ts'
import { stillFree } from '../../src/model/picks/waiting/index.ts'
import type { PicksAsk, PicksEvent, Questions } from './protocol.ts'

/** The same for everybody who asks, so that an order changes only with what is known and called out. */
const seed = 1
/** Simulated matches of each pairing behind the scores of all alliances. */
const matchesEach = 64
/** Selections that are gone on with to see who is still there. */
const waitingRuns = 400

/** And so many behind the first, rough order. */
const roughMatches = 16

interface Ready {
  key: string
  game: Game
  teams: RatedTeam[]
  playing: Playing
  /** What is played so far. */
  lots: Lot[]
  rough: Strengths
  /** Of all matches; null while only the first are played. */
  whole: Strengths | null
  /** What everybody goes by, by selection: it is worked out at its beginning, so that an order hangs on what is so and not on the way there. */
  worth: Map<string, WorkedOrder['worth']>
}

let ready: Ready | null = null

const strengthsOf = ({ game, teams, lots }: Pick<Ready, 'game' | 'teams' | 'lots'>) =>
  new Strengths(new Sibling(game, teams, lots))

/** The first matches of everybody are played once for an event as it is known. */
function begunFor({ key, game, level, robots, ratings }: PicksEvent): Ready {
  if (ready?.key === key) return ready
  const teams = Object.keys(robots).flatMap((team) => {
    const packed = ratings[team]
    return packed ? [ratedFrom(team, { rating: unpackRating(game, packed), option: robots[team]! })] : []
  })
  const playing = new Playing({ game, level: level ?? undefined, teams })
  const lots = samplePairings({ teams, seed }).map((pairing, k): Lot => {
    const request = { ...pairing, seed: 100 * seed + k, from: 0, to: roughMatches }
    return { pairing, played: playing.play(request) }
  })
  const rough = strengthsOf({ game, teams, lots })
  ready = { ...{ key, game, teams, playing, lots, rough }, whole: null, worth: new Map() }
  return ready
}

/** The same with all matches. */
function readyFor(of: PicksEvent): Ready & { strengths: Strengths } {
  const begun = begunFor(of)
  if (!begun.whole) {
    begun.lots = begun.lots.map(({ pairing, played }, k): Lot => {
      const request = { ...pairing, seed: 100 * seed + k, from: roughMatches, to: matchesEach }
      return { pairing, played: joined([played, begun.playing.play(request)]) }
    })
    begun.whole = strengthsOf(begun)
  }
  return { ...begun, strengths: begun.whole }
}

interface Asked {
  of: PicksEvent
  ask: PicksAsk
}

function requestFor({ of, ask }: Asked): OrderRequest & { since: Pick<WorkedOrder, 'worth'> } {
  const { strengths, worth } = readyFor(of)
  const { rules, seeds, steps, us } = ask
  const beginning = { game: of.game, strengths, selection: Selection.begin(rules, seeds), us }
  const key = JSON.stringify([rules, seeds, us])
  const known = worth.get(key) ?? roughWorth(beginning)
  worth.set(key, known)
  const { selection } = selectionAfter(rules, seeds, steps)
  return { ...beginning, selection, aside: new Set(ask.aside), since: { worth: known } }
}

/** An order that is there at once, for whoever has just opened the page. */
export function picksRough({ of, ask }: Asked): Questions['picksRough']['answer'] {
  const { rules, seeds, steps, us, aside } = ask
  const { selection } = selectionAfter(rules, seeds, steps)
  return roughOrder({ game: of.game, strengths: begunFor(of).rough, selection, us, aside: new Set(aside) })
}

/** The order as it is now, who will still be there at our next turn, and what there is to simulate. */
export function picksOrder(asked: Asked): Questions['picksOrder']['answer'] {
  const request = requestFor(asked)
  const worked = pickOrder(request)
  const { strengths, selection, us } = request
  const waiting = stillFree({ sibling: strengths.sibling, selection, us, runs: waitingRuns, seed })
  return { worked, waiting, tasks: refineTasks(worked, strengths) }
}

/** A round of matches of some choices. */
export const picksRound = ({ of, tasks, round }: Questions['picksRound']['ask']): Questions['picksRound']['answer'] =>
  tasks.map((task) => playRound(readyFor(of).playing, task, { round, seed }))

/** Accept or decline, when whoever is on turn invites us. */
export function picksOffer({
  of,
  ask,
  format,
  runs,
}: Questions['picksOffer']['ask']): Questions['picksOffer']['answer'] {
  const { strengths, selection, us, since } = requestFor({ of, ask })
  return compareOffer({ strengths, selection, us, worth: since.worth, format, runs, seed })
}

export const playoffs = ({ of, ...request }: Questions['playoffs']['ask']): Questions['playoffs']['answer'] =>
  playoffChances({ strengths: readyFor(of).strengths, ...request, seed })

export const substitutions = ({
  of,
  alliance,
  ...request
}: Questions['substitutions']['ask']): Questions['substitutions']['answer'] =>
  threesOf({ strengths: readyFor(of).strengths, ...request, seed }, alliance)
