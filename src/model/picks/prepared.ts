import type { Game, Option } from '../documents/types.ts'
import {
  type OrderRequest,
  type PickOrder,
  pickOrder,
  roughOrder,
  roughWorth,
  Strengths,
  type WorkedOrder,
} from './order/index.ts'
import {
  joined,
  type Lot,
  type PackedRating,
  Playing,
  type RatedTeam,
  ratedFrom,
  Sibling,
  samplePairings,
  thinnedRating,
  unpackRating,
} from './scores/index.ts'
import { Selection, type SelectionRules, type SelectionStep, selectionAfter } from './selection/index.ts'
import { stillFree, type Waiting } from './waiting/index.ts'

/** An event's teams as selections and playoffs take them. */
export interface PicksEvent {
  /** Another as soon as any of it is. */
  key: string
  game: Game
  level: string | null
  robots: { [team: string]: Option }
  ratings: { [team: string]: PackedRating }
}

/** A selection as far as it was called out, and who we are. */
export interface PicksAsk {
  rules: SelectionRules
  seeds: readonly string[]
  steps: readonly SelectionStep[]
  us: string
  /** Whom we do not invite. */
  aside: readonly string[]
}

/** The same for everybody who asks, so that an order changes only with what is known and called out. */
export const picksSeed = 1
/** Simulated matches of each pairing behind the scores of all alliances, and behind the first, rough order. */
const [matchesEach, roughMatches] = [64, 16]
/** Draws that the first, rough order goes by: one of so many. */
const roughEvery = 8
/** Selections that are gone on with to see who is still there. */
const waitingRuns = 400

/** An event made ready once for whatever is asked of its selection: matches are played as they are needed. */
export class PreparedPicks {
  readonly key: string
  readonly playing: Playing
  private readonly game: Game
  private readonly teams: RatedTeam[]
  private lots: Lot[]
  /** From few matches and every eighth draw. */
  private readonly first: Strengths
  private whole: Strengths | null = null
  /** What everybody goes by, by selection: it is worked out at its beginning, so that an order hangs on what is so and not on the way there. */
  private readonly worth = new Map<string, WorkedOrder['worth']>()

  /** @throws Error where there are too few teams for a match */
  constructor({ key, game, level, robots, ratings }: PicksEvent) {
    this.key = key
    this.game = game
    this.teams = Object.keys(robots).flatMap((team) => {
      const packed = ratings[team]
      return packed ? [ratedFrom(team, { rating: unpackRating(game, packed), option: robots[team] as Option })] : []
    })
    this.playing = new Playing({ game, level: level ?? undefined, teams: this.teams })
    this.lots = samplePairings({ teams: this.teams, seed: picksSeed }).map((pairing, k): Lot => {
      const request = { ...pairing, seed: 100 * picksSeed + k, from: 0, to: roughMatches }
      return { pairing, played: this.playing.play(request) }
    })
    const few = this.teams.map(({ rating, ...team }) => ({ ...team, rating: thinnedRating(rating, roughEvery) }))
    this.first = new Strengths(new Sibling(game, few, this.lots))
  }

  /** What any alliances are worth, from all matches of the sample. */
  get strengths(): Strengths {
    if (this.whole) return this.whole
    this.lots = this.lots.map(({ pairing, played }, k): Lot => {
      const request = { ...pairing, seed: 100 * picksSeed + k, from: roughMatches, to: matchesEach }
      return { pairing, played: joined([played, this.playing.play(request)]) }
    })
    this.whole = new Strengths(new Sibling(this.game, this.teams, this.lots))
    return this.whole
  }

  /** An order that is there at once. */
  rough({ rules, seeds, steps, us, aside }: PicksAsk): PickOrder {
    const { selection } = selectionAfter(rules, seeds, steps)
    return roughOrder({ game: this.game, strengths: this.first, selection, us, aside: new Set(aside) })
  }

  request({ rules, seeds, steps, us, aside }: PicksAsk): OrderRequest & { since: Pick<WorkedOrder, 'worth'> } {
    const { game, strengths, worth } = this
    const beginning = { game, strengths, selection: Selection.begin(rules, seeds), us }
    const key = JSON.stringify([rules, seeds, us])
    const known = worth.get(key) ?? roughWorth(beginning)
    worth.set(key, known)
    const { selection } = selectionAfter(rules, seeds, steps)
    return { ...beginning, selection, aside: new Set(aside), since: { worth: known } }
  }

  /** The order as it is now, and who will still be there at our next turn. */
  order(ask: PicksAsk): { worked: WorkedOrder; waiting: Waiting[] } {
    const request = this.request(ask)
    const { strengths, selection, us } = request
    const waiting = stillFree({ sibling: strengths.sibling, selection, us, runs: waitingRuns, seed: picksSeed })
    return { worked: pickOrder(request), waiting }
  }
}
