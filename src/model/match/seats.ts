import { refusal } from '../documents/sentences.ts'
import { tie } from '../plan/finishes.ts'
import { type Choices, group } from './choices.ts'
import type { Ground } from './ground.ts'
import { SeatedHabit } from './habits.ts'
import { Arena } from './kernel/arena.ts'
import { at, most } from './kernel/layout.ts'
import type { Host } from './kernel/memory.ts'
import { ObservedPlayer } from './observed.ts'
import type { PlannedPlayer } from './planned.ts'
import type { PlayedLeg, Player, Stand } from './player.ts'
import type { Program } from './program.ts'
import type { Quantiles } from './quantiles.ts'

/** No leg, in a byte; four bytes that are not there yet; a stand with so many legs has no bytes for them. As in events.ts. */
const none = 255
const unknown = -2
const unlisted = 250

/** A player's choices at one speed of its drive, as they lie in memory. */
interface Mind {
  readonly place: number
  readonly choices: Choices
  readonly views: number
}

interface Seated {
  readonly minds: Map<number, Mind>
  readonly numbers: Map<Stand, number>
  /** Table and length of the pace. */
  readonly pace: readonly [number, number]
  /** Of an observed robot; it has no minds of a plan. */
  readonly habit: SeatedHabit | null
}

/**
 * Players in the memory of the event loop: their stands, legs, tables of times and of actions, each written once. What the
 * loop lacks in the middle of a match, it asks for here.
 */
export class Seats implements Host {
  readonly arena: Arena
  readonly ground: Ground
  /** Told of what a replay shows. */
  teller: Host['tell'] | null = null
  private readonly seated = new Map<Player, Seated>()
  private readonly stands: { player: Player; stand: Stand }[] = []
  private readonly legs = new Map<number, PlayedLeg>()
  private readonly programs = new Map<Program, number>()
  private readonly tables = new Map<Quantiles, number>()
  private readonly minds = new Map<number, { player: Player; mind: Mind }>()
  private readonly spots = new Map<string, number>()
  private readonly eight = new Float64Array(group)
  private lists = new Float64Array(0)

  constructor(ground: Ground, quick = true) {
    this.ground = ground
    this.arena = new Arena(this, quick)
  }

  seat(player: Player): Seated {
    const found = this.seated.get(player)
    if (found) return found
    const seated: Seated = {
      minds: new Map(),
      numbers: new Map(),
      pace: [this.table(player.pace), player.pace.values.length],
      habit: player instanceof ObservedPlayer ? new SeatedHabit(this.arena, player) : null,
    }
    this.seated.set(player, seated)
    for (const stand of player.stands) this.number(player, stand)
    this.mind(player, 0)
    return seated
  }

  /** Gives an observed robot its numbers for one match; its draw may be another than the match's. */
  meet(player: ObservedPlayer, draw: number): void {
    this.seated.get(player)?.habit?.meet(draw)
  }

  /** Place of a player's choices when its drives take (1 + slowdown) times as long. */
  mind(player: Player, slowdown: number): number {
    const seated = this.seat(player)
    if (seated.habit) return seated.habit.mind(slowdown)
    const known = seated.minds.get(slowdown)
    if (known) return known.place
    const { arena } = this
    const choices = (player as PlannedPlayer).choicesAt(slowdown)
    const { rooms, graph, steps } = choices.problem
    const dimensions = rooms.goals.map((goal, d) => [
      this.ground.placeOf.get(graph.goals[goal]!.id) as number,
      rooms.most[d] as number,
      rooms.strides[d] as number,
    ])
    const slow = arena.copiedReals([1 + slowdown])
    const views = arena.wholes(4 * most.stands)
    const place = arena.copiedWholes([views, steps + 1, slow, rooms.goals.length, ...dimensions.flat()])
    const mind = { place, choices, views }
    seated.minds.set(slowdown, mind)
    this.minds.set(place, { player, mind })
    for (const [stand, number] of seated.numbers) {
      this.view(mind, stand, number)
      if (stand.planned >= 0 && stand.legs.length < unlisted)
        arena.views.wholes[views + 4 * number] = this.actions(choices, stand)
    }
    return place
  }

  /** The best action of a planned stand by room and time left, one byte each. */
  private actions({ problem, table }: Choices, { planned }: Stand): number {
    const { row, pad } = table
    const actions = table.actions[planned] as Int16Array
    const times = problem.steps + 1
    const place = this.arena.bytes(problem.rooms.size * times)
    const { bytes } = this.arena.views
    for (let r = 0; r < problem.rooms.size; r++)
      for (let t = 0; t < times; t++) {
        const action = actions[r * row + pad + t] as number
        bytes[place + r * times + t] = action < 0 ? none : action
      }
    return place
  }

  /** Number of a stand, which is made known to the loop where it is not. */
  number(player: Player, stand: Stand): number {
    const seated = this.seated.get(player) as Seated
    const known = seated.numbers.get(stand)
    if (known !== undefined) return known
    const number = this.stands.length
    if (number >= most.stands) throw refusal('overBudget', ['tooManyNodes', { most: most.stands }])
    this.stands.push({ player, stand })
    seated.numbers.set(stand, number)
    const { arena } = this
    const legs = arena.copiedWholes(stand.legs.map((leg) => this.leg(player, leg)))
    arena.views.wholes[at.standLegs + number] = legs
    arena.views.wholes[at.standCount + number] = stand.legs.length
    for (const mind of seated.minds.values()) this.view(mind, stand, number)
    return number
  }

  /** How a mind sees a stand: no table of actions and no lists yet; as many places as the stand's legs lead to. */
  private view({ views }: Mind, stand: Stand, number: number): void {
    const places = new Set(stand.legs.map(({ place }) => place))
    this.arena.views.wholes.set([-1, -1, places.size, -1], views + 4 * number)
  }

  private table(quantiles: Quantiles): number {
    const known = this.tables.get(quantiles) ?? this.arena.copiedReals(quantiles.values)
    this.tables.set(quantiles, known)
    return known
  }

  private leg(player: Player, leg: PlayedLeg): number {
    const { arena } = this
    const after = arena.wholes(player.mostPieces + 1)
    arena.views.wholes.fill(-1, after, after + player.mostPieces + 1)
    const numbers = arena.copiedReals([leg.drive, player.successOf(leg)])
    this.seated.get(player)?.habit?.note(numbers + 1, leg)
    const atMost = leg.retry ? arena.copiedReals(chancesOf(leg.success)) : -1
    const place = arena.copiedWholes([
      leg.kind,
      leg.place,
      this.program(leg.program),
      leg.load,
      this.spot(leg.spot),
      leg.retry ? this.table(leg.retry) : -1,
      leg.retry?.values.length ?? 0,
      after,
      leg.words,
      numbers,
      atMost,
      leg.otherwise,
    ])
    this.legs.set(place, leg)
    return place
  }

  private spot(id: string): number {
    const known = this.spots.get(id) ?? this.spots.size
    this.spots.set(id, known)
    return known
  }

  private program(program: Program): number {
    const known = this.programs.get(program)
    if (known !== undefined) return known
    const { whole, order, lastEach, words, wordOf, each, tables, firstOf, waitsFor } = program
    const stages = Array.from(order).flatMap((stage) => {
      const quantiles = tables[stage] as Quantiles
      const waits = waitsFor.subarray(firstOf[stage], firstOf[stage + 1])
      return [
        stage,
        wordOf[stage] as number,
        each[stage] as number,
        this.table(quantiles),
        quantiles.values.length,
        waits.length,
        ...waits,
      ]
    })
    const place = this.arena.copiedWholes([
      whole ? this.table(whole) : -1,
      whole?.values.length ?? 0,
      order.length,
      lastEach,
      words,
      ...stages,
    ])
    this.programs.set(program, place)
    return place
  }

  // What the loop asks

  /** The best legs of a stand's best four places, one byte each, with eight times left at once. */
  fillChoices(place: number, number: number, room: number, t: number): number {
    const { cells, stand, choices, first, last } = this.cellsOf(place, number, { room, t, kind: 1 })
    const width = this.arena.views.wholes[this.viewOf(place, number) + 2] as number
    const length = 2 * width + stand.legs.length
    if (this.lists.length < length * group) this.lists = new Float64Array(length * group)
    this.fillEight(choices, stand, { room, first, last, width }, this.lists, 0)
    for (let j = 0; j <= last - first; j++) this.arena.views.wholes[cells + j] = bestFour(this.lists, j * length, width)
    return this.arena.views.wholes[cells + t - first] as number
  }

  /**
   * A list of a stand's legs at one room and time left: the best leg of each place that they lead to with its Q, −1 where it
   * is worth nothing; behind it Q of every leg.
   */
  fillList(place: number, number: number, room: number, t: number): number {
    const { cells, stand, choices, first, last } = this.cellsOf(place, number, { room, t, kind: 3 })
    const width = this.arena.views.wholes[this.viewOf(place, number) + 2] as number
    const length = 2 * width + stand.legs.length
    const lists = this.arena.reals(length * (last - first + 1))
    this.fillEight(choices, stand, { room, first, last, width }, this.arena.views.reals, lists)
    for (let j = 0; j <= last - first; j++) this.arena.views.wholes[cells + j] = lists + j * length
    return lists + (t - first) * length
  }

  private viewOf(place: number, number: number): number {
    return (this.minds.get(place) as { mind: Mind }).mind.views + 4 * number
  }

  /** The cells of eight times left in one room; made when first asked for. */
  private cellsOf(place: number, number: number, { room, t, kind }: { room: number; t: number; kind: 1 | 3 }) {
    const { arena } = this
    const { choices } = (this.minds.get(place) as { mind: Mind }).mind
    const { stand } = this.stands[number] as { stand: Stand }
    const times = choices.problem.steps + 1
    const view = this.viewOf(place, number) + kind
    if ((arena.views.wholes[view] as number) < 0) {
      const size = choices.problem.rooms.size * times
      const cells = arena.wholes(size)
      arena.views.wholes.fill(kind === 1 ? unknown : -1, cells, cells + size)
      arena.views.wholes[view] = cells
    }
    const first = t - (t % group)
    const last = Math.min(times - 1, first + group - 1)
    return { cells: (arena.views.wholes[view] as number) + room * times + first, stand, choices, first, last }
  }

  private fillEight(
    choices: Choices,
    stand: Stand,
    { room, first, last, width }: { room: number; first: number; last: number; width: number },
    into: Float64Array,
    at: number,
  ): void {
    const length = 2 * width + stand.legs.length
    for (let i = 0; i < stand.legs.length; i++) {
      choices.eight(stand, i, room, first, this.eight)
      for (let j = 0; j <= last - first; j++) into[at + j * length + 2 * width + i] = this.eight[j] as number
    }
    for (let j = 0; j <= last - first; j++) rank(stand, into, at + j * length, width)
  }

  standAfter(place: number, load: number): number {
    const leg = this.legs.get(place) as PlayedLeg
    const { player } = this.stands[this.numberOf(leg)] as { player: Player }
    const number = this.number(player, player.after(leg, load))
    this.arena.views.wholes[(this.arena.views.wholes[place + 7] as number) + load] = number
    return number
  }

  private numberOf(leg: PlayedLeg): number {
    for (const { numbers } of this.seated.values()) {
      const number = numbers.get(leg.from)
      if (number !== undefined) return number
    }
    throw new Error('a leg begins where nobody stands')
  }

  tell: Host['tell'] = (...told) => this.teller?.(...told)

  /** The leg that a place of the memory stands for. */
  legAt(place: number): PlayedLeg | undefined {
    return this.legs.get(place)
  }
}

/** Puts the best leg of each place in front of a list that has Q of every leg. */
function rank(stand: Stand, reals: Float64Array, list: number, width: number): void {
  let k = -1
  for (let i = 0; i < stand.legs.length; i++) {
    if (i === 0 || stand.legs[i]!.place !== stand.legs[i - 1]!.place) {
      k++
      reals[list + 2 * k] = -1
      reals[list + 2 * k + 1] = 0
    }
    const value = reals[list + 2 * width + i] as number
    if (value <= (reals[list + 2 * k + 1] as number) + tie) continue
    reals[list + 2 * k] = i
    reals[list + 2 * k + 1] = value
  }
}

/** The four best of a list of the best by place, the best in the lowest byte; earlier ones first where they are as good. */
function bestFour(reals: Float64Array, list: number, width: number): number {
  let bytes = 0
  for (let n = 0; n < 4; n++) {
    let best = -1
    let most = 0
    for (let k = 0; k < width; k++) {
      const value = reals[list + 2 * k + 1] as number
      if (value <= most + tie) continue
      best = k
      most = value
    }
    bytes |= (best < 0 ? none : (reals[list + 2 * best] as number)) << (8 * n)
    if (best >= 0) reals[list + 2 * best + 1] = 0
  }
  return bytes
}

/** Chances that at most 0, 1, … 19 tries fail before one succeeds. */
const chancesOf = (success: number): number[] => Array.from({ length: 20 }, (_, k) => 1 - (1 - success) ** (k + 1))
