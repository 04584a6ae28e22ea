import type { Game, Option } from '../../documents/types.ts'
import { ObservedPlayer } from '../../match/observed.ts'
import { Reckoning } from '../../match/reckoning.ts'
import { Roster } from '../../match/setup.ts'
import { Simulator } from '../../match/simulator.ts'
import type { Pairing, Played } from './types.ts'

/** So many options share the memory of one event loop; then a new one is begun. */
const mostOptions = 60

export interface PlayedField {
  game: Game
  /** Of the event: which number a bonus asks for. */
  level?: string | undefined
  teams: readonly { team: string; option: Option }[]
}

export interface PlayRequest extends Pairing {
  /** A team's draws hang on seed, match and team alone, a seat's luck on seed, match and seat. */
  seed: number
  from: number
  to: number
}

/** Simulates matches of any alliances of an event; keeps what robots can do between them. */
export class Playing {
  private readonly field: PlayedField
  private readonly options: Map<string, Option>
  private roster: Roster
  private readonly seated = new Set<Option>()

  constructor(field: PlayedField) {
    this.field = field
    this.options = new Map(field.teams.map(({ team, option }) => [team, option]))
    this.roster = new Roster(field.game)
  }

  /** Makes further teams known; who is known already stays as it was. */
  meet(teams: PlayedField['teams']): void {
    for (const { team, option } of teams) if (!this.options.has(team)) this.options.set(team, option)
  }

  /**
   * Matches `from` to `to` (not included) of two alliances of three.
   * @throws ModelError where a bonus says nothing about the level
   */
  play({ ours, theirs, seed, from, to }: PlayRequest): Played {
    const { game, level } = this.field
    const options = [...ours, ...theirs].map((team) => this.options.get(team) as Option)
    const setup = this.rosterFor(options).setup(options.slice(0, 3), options.slice(3))
    const match = new Simulator(setup, seed)
    const reckoning = new Reckoning(setup, level ?? null)
    const criterion = criteriaOf(game, setup.ground.placeOf)
    const played = empty(to - from, game.ranking.then.length)
    const robots = setup.players.map((player) => (player instanceof ObservedPlayer ? player : null))
    for (let k = 0; k < to - from; k++) {
      match.play(from + k)
      reckoning.of(match)
      for (let i = 0; i < 6; i++) {
        const robot = robots[i]
        played.met[6 * k + i] = robot ? robot.draws.indexOf(robot.now) : 0
      }
      for (let side = 0; side < 2; side++) {
        const at = 2 * k + side
        played.scores[at] = reckoning.score[side] as number
        let bits = 0
        for (let b = 0; b < game.bonuses.length; b++) bits |= (reckoning.bonuses[2 * b + side] as number) << b
        played.bonuses[at] = bits
        for (const [c, of] of criterion.entries())
          played.criteria[at * criterion.length + c] = of(match, reckoning, side)
      }
    }
    return played
  }

  private rosterFor(options: readonly Option[]): Roster {
    if (new Set([...this.seated, ...options]).size > mostOptions) {
      this.roster = new Roster(this.field.game)
      this.seated.clear()
    }
    for (const option of options) this.seated.add(option)
    return this.roster
  }
}

type Criterion = (match: Simulator, reckoning: Reckoning, side: number) => number

function criteriaOf(game: Game, placeOf: ReadonlyMap<string, number>): Criterion[] {
  return game.ranking.then.map((criterion): Criterion => {
    if (criterion === 'score') return (_, { score }, side) => score[side] as number
    if (criterion === 'autoPoints') return (_, { autoPoints }, side) => autoPoints[side] as number
    if (criterion === 'finishPoints') return (_, { finishPoints }, side) => finishPoints[side] as number
    const places = criterion.pieces.map((id) => placeOf.get(id) as number)
    return ({ counts, ground }, _, side) => {
      let sum = 0
      for (const place of places) sum += counts[side * ground.count + place] as number
      return sum
    }
  })
}

const empty = (count: number, criteria: number): Played => ({
  met: new Uint16Array(6 * count),
  scores: new Float64Array(2 * count),
  bonuses: new Uint32Array(2 * count),
  criteria: new Float64Array(2 * count * criteria),
})

/** Several lots of matches as one. */
export function joined(parts: readonly Played[]): Played {
  const of = <Numbers extends Uint16Array | Uint32Array | Float64Array>(
    pick: (part: Played) => Numbers,
    make: (length: number) => Numbers,
  ): Numbers => {
    const whole = make(parts.reduce((sum, part) => sum + pick(part).length, 0))
    let at = 0
    for (const part of parts) {
      whole.set(pick(part), at)
      at += pick(part).length
    }
    return whole
  }
  return {
    met: of(
      (part) => part.met as Uint16Array<ArrayBuffer>,
      (length) => new Uint16Array(length),
    ),
    scores: of(
      (part) => part.scores as Float64Array<ArrayBuffer>,
      (length) => new Float64Array(length),
    ),
    bonuses: of(
      (part) => part.bonuses as Uint32Array<ArrayBuffer>,
      (length) => new Uint32Array(length),
    ),
    criteria: of(
      (part) => part.criteria as Float64Array<ArrayBuffer>,
      (length) => new Float64Array(length),
    ),
  }
}
