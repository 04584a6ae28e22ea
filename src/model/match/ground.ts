import type { Game } from '../documents/types.ts'

/** The places of a game by number: sources, then goals, then finishes; what a match needs to know of each. */
export interface Ground {
  readonly game: Game
  readonly count: number
  readonly ids: readonly string[]
  readonly sources: number
  readonly goals: number
  /** Number of each place by its id. */
  readonly placeOf: ReadonlyMap<string, number>
  readonly slots: Int32Array
  /** By place: pieces at the match's start, −1 without end; of sources alone. */
  readonly stock: Int32Array
  /** By place: seconds between restocks (Infinity without), and pieces that each brings. */
  readonly every: Float64Array
  readonly size: Int32Array
  /** By place: whether both alliances draw on one stock. */
  readonly shared: Uint8Array
  /** By place: pieces that a goal can take, the greatest number without a limit. */
  readonly capacity: Int32Array
  /** By place: points of a piece, or 0 on a hold goal; and points per second of holding, or 0. */
  readonly auto: Float64Array
  readonly teleop: Float64Array
  readonly autoPerSecond: Float64Array
  readonly teleopPerSecond: Float64Array
  /** Places of the hold goals. */
  readonly holds: Int32Array
  /** By place: points of a finish. */
  readonly finishPoints: Float64Array
  /** Elapsed time (s) when autonomous ends, teleop begins and ends, and the endgame opens. */
  readonly clock: { readonly auto: number; readonly teleop: number; readonly end: number; readonly endgame: number }
}

/** Room without a limit. */
export const unlimited = 2 ** 30

export function groundOf(game: Game): Ground {
  const places = [...game.sources, ...game.goals, ...game.finishes]
  const sources = game.sources.length
  const goals = game.goals.length
  const source = <T>(value: (place: (typeof game.sources)[number]) => T, otherwise: T) =>
    places.map((_, p) => (p < sources ? value(game.sources[p]!) : otherwise))
  const goal = <T>(value: (place: (typeof game.goals)[number]) => T, otherwise: T) =>
    places.map((_, p) => (p >= sources && p < sources + goals ? value(game.goals[p - sources]!) : otherwise))
  const { auto, pause, teleop, endgame } = game.clock
  const end = auto + pause + teleop
  return {
    game,
    count: places.length,
    ids: places.map(({ id }) => id),
    sources,
    goals,
    placeOf: new Map(places.map(({ id }, p) => [id, p])),
    slots: Int32Array.from(places, (place) => place.slots),
    stock: Int32Array.from(source(({ stock }) => stock ?? -1, -1)),
    every: Float64Array.from(
      source(({ stock, restock }) => (stock === null ? null : restock?.every), null),
      orNever,
    ),
    size: Int32Array.from(source(({ restock }) => restock?.size ?? 0, 0)),
    shared: Uint8Array.from(source(({ shared }) => Number(shared), 0)),
    capacity: Int32Array.from(goal(({ capacity }) => capacity ?? unlimited, unlimited)),
    auto: Float64Array.from(goal(({ award }) => (award.kind === 'each' ? award.auto : 0), 0)),
    teleop: Float64Array.from(goal(({ award }) => (award.kind === 'each' ? award.teleop : 0), 0)),
    autoPerSecond: Float64Array.from(goal(({ award }) => (award.kind === 'hold' ? award.autoPerSecond : 0), 0)),
    teleopPerSecond: Float64Array.from(goal(({ award }) => (award.kind === 'hold' ? award.teleopPerSecond : 0), 0)),
    holds: Int32Array.from(game.goals.flatMap(({ award }, g) => (award.kind === 'hold' ? [sources + g] : []))),
    finishPoints: Float64Array.from(places, (_, p) => game.finishes[p - sources - goals]?.points ?? 0),
    clock: { auto, teleop: auto + pause, end, endgame: end - endgame },
  }
}

const orNever = (seconds: number | null | undefined): number => seconds ?? Number.POSITIVE_INFINITY
