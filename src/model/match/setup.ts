import type { Game, Option } from '../documents/types.ts'
import { type Ground, groundOf } from './ground.ts'
import { ObservedPlayer } from './observed.ts'
import { PlannedPlayer } from './planned.ts'
import { type Kept, keptFor, type Player } from './player.ts'
import { Seats } from './seats.ts'

/** One step of one robot's routine. */
export interface AutoStep {
  readonly robot: number
  readonly at: number
  readonly place: number
  readonly count: number
  readonly success: number
  readonly needsPrevious: boolean
  /** Place of its first random word. */
  readonly word: number
}

/** Six options made ready to meet: robots 0–2 ours, 3–5 theirs. */
export interface Setup {
  readonly ground: Ground
  readonly seats: Seats
  readonly players: readonly Player[]
  readonly steps: readonly AutoStep[]
  /** By robot: chance to move off the start in autonomous, pieces that the routine takes. */
  readonly leaves: Float64Array
  readonly takes: readonly (readonly { place: number; count: number }[])[]
  /** By robot, written in each match: whether the step before succeeded in full; words of the routine. */
  readonly clean: Uint8Array
  /** Places in memory of the words of the routines. */
  readonly autoWordsAt: Int32Array
  /** By robot, as time left (s): −1 for never. */
  readonly defendsFrom: Float64Array
  readonly defendsUntil: Float64Array
  readonly callAt: Float64Array
  /** By robot: how much its marking slows, and who may mark it. */
  readonly slowdown: Float64Array
  readonly markers: readonly (readonly number[])[]
  /** By place: number of the hold goal, −1 for others; whether others feel each single piece of a leg at its time. */
  readonly holdOf: Int32Array
  readonly matters: Uint8Array
  /** Most random words of one leg. */
  readonly mostWords: number
}

/** Players of one game, each made once. */
export class Roster {
  readonly ground: Ground
  private readonly kept: Kept
  private readonly players = new Map<string, Player>()
  /** The same by the object itself: writing a robot out takes longer than a match. */
  private readonly known = new WeakMap<Option, Player>()
  private readonly seats: Seats

  /** @param quick false for the plain event loop, which is the fallback */
  constructor(game: Game, quick = true) {
    this.ground = groundOf(game)
    this.kept = keptFor(game)
    this.seats = new Seats(this.ground, quick)
  }

  player(option: Option): Player {
    const known = this.known.get(option)
    if (known) return known
    const key = JSON.stringify({ ...option, id: '', name: '' })
    const Made = option.robot.habit ? ObservedPlayer : PlannedPlayer
    const found = this.players.get(key) ?? new Made(this.ground, option, this.kept)
    this.players.set(key, found)
    this.known.set(option, found)
    return found
  }

  setup(ours: readonly Option[], theirs: readonly Option[]): Setup {
    return setupOf(
      this.seats,
      [...ours, ...theirs].map((option) => this.player(option)),
    )
  }
}

/** Time left (s) at which a robot leaves for a finish in any case; −1 for none. */
function callOf(player: Player): number {
  if (player instanceof ObservedPlayer) return player.now.departs
  const { finish } = player.option
  return finish.mode === 'always' ? finish.at : -1
}

function setupOf(seats: Seats, players: readonly Player[]): Setup {
  const { ground } = seats
  const routines = players.map(({ option }) => option.robot.autos.find(({ id }) => id === option.auto) ?? null)
  const autoWordsAt = new Int32Array(6)
  let words = seats.arena.wholes(players.reduce((sum, { autoWords }) => sum + autoWords + 8, 0))
  const steps = players.flatMap((player, robot) => {
    autoWordsAt[robot] = words
    let word = words
    words += 8 * Math.ceil(player.autoWords / 8)
    return (routines[robot]?.steps ?? []).map((step): AutoStep => {
      const first = word
      word += step.count
      const { at, count, success, needsPrevious } = step
      return { robot, at, count, success, needsPrevious, place: ground.placeOf.get(step.goal) as number, word: first }
    })
  })
  const defends = players.map(({ option }) => option.role.defend)
  const capacity = (place: number) => ground.capacity[place] as number
  const holdOf = Int32Array.from({ length: ground.count }, (_, place) => ground.holds.indexOf(place))
  return {
    ground,
    seats,
    players,
    steps: steps.sort((a, b) => a.at - b.at || a.robot - b.robot),
    leaves: Float64Array.from(routines, (routine) => routine?.leaves ?? 0),
    takes: routines.map((routine) =>
      (routine?.takes ?? []).map(({ source, count }) => ({ place: ground.placeOf.get(source) as number, count })),
    ),
    clean: new Uint8Array(6),
    autoWordsAt,
    defendsFrom: Float64Array.from(defends, (defend) => defend?.from ?? -1),
    defendsUntil: Float64Array.from(defends, (defend) => defend?.until ?? -1),
    callAt: Float64Array.from(players, callOf),
    slowdown: Float64Array.from(players, ({ option }) => option.robot.defence.slowdown),
    markers: players.map((_, robot) =>
      [0, 1, 2].map((k) => (robot < 3 ? 3 + k : k)).filter((other) => defends[other]?.mark === robot % 3),
    ),
    holdOf,
    matters: Uint8Array.from({ length: ground.count }, (_, place) =>
      Number(holdOf[place]! >= 0 || capacity(place) < 2 ** 30),
    ),
    mostWords: Math.max(...players.map((player) => player.mostWords)),
  }
}
