import { refusal } from '../documents/sentences.ts'
import { tie } from '../plan/finishes.ts'
import { type Choices, group } from './choices.ts'
import type { Ground } from './ground.ts'
import { Arena } from './kernel/arena.ts'
import { at, most } from './kernel/layout.ts'
import type { Host } from './kernel/memory.ts'
import type { PlayedLeg, Player, Stand } from './player.ts'
import type { Program } from './program.ts'
import type { Quantiles } from './quantiles.ts'

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
    }
    this.seated.set(player, seated)
    for (const stand of player.stands) this.number(player, stand)
    this.mind(player, 0)
    return seated
  }

  /** Place of a player's choices when its drives take (1 + slowdown) times as long. */
  mind(player: Player, slowdown: number): number {
    const seated = this.seat(player)
    const known = seated.minds.get(slowdown)
    if (known) return known.place
    const { arena } = this
    const choices = player.choicesAt(slowdown)
    const { rooms, graph, steps } = choices.problem
    const { actions, row, pad } = choices.table
    const dimensions = rooms.goals.map((goal, d) => [
      this.ground.placeOf.get(graph.goals[goal]!.id) as number,
      rooms.most[d] as number,
      rooms.strides[d] as number,
    ])
    const slow = arena.copiedReals([1 + slowdown])
    const rows = arena.copiedShorts(actions)
    const views = arena.wholes(4 * most.stands)
    const place = arena.copiedWholes([views, row, steps + 1, slow, rooms.goals.length, ...dimensions.flat()])
    const mind = { place, choices, views }
    seated.minds.set(slowdown, mind)
    this.minds.set(place, { player, mind })
    for (const [stand, number] of seated.numbers) {
      this.view(mind, stand, number)
      if (stand.planned >= 0) arena.views.wholes[views + 4 * number] = (rows[stand.planned] as number) + pad
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
    this.arena.views.wholes.set([-1, -1, places.size, 0], views + 4 * number)
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
    const numbers = arena.copiedReals([leg.drive, leg.success])
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

  /**
   * A list of a stand's legs at one room and time left: the best leg of each place that they lead to with its Q, −1 where it
   * is worth nothing; behind it Q of every leg.
   */
  fillCell(place: number, number: number, room: number, t: number): number {
    const { mind } = this.minds.get(place) as { mind: Mind }
    const { stand } = this.stands[number] as { stand: Stand }
    const { arena } = this
    const times = mind.choices.problem.steps + 1
    const view = mind.views + 4 * number
    if ((arena.views.wholes[view + 1] as number) < 0) {
      const size = mind.choices.problem.rooms.size * times
      const cells = arena.wholes(size)
      arena.views.wholes.fill(-1, cells, cells + size)
      arena.views.wholes[view + 1] = cells
    }
    const first = t - (t % group)
    const last = Math.min(times - 1, first + group - 1)
    const width = arena.views.wholes[view + 2] as number
    const length = 2 * width + stand.legs.length
    const lists = arena.reals(length * (last - first + 1))
    for (let i = 0; i < stand.legs.length; i++) {
      mind.choices.eight(stand, i, room, first, this.eight)
      for (let j = 0; j <= last - first; j++) this.reals[lists + j * length + 2 * width + i] = this.eight[j] as number
    }
    const cells = (arena.views.wholes[view + 1] as number) + room * times
    for (let j = 0; j <= last - first; j++) {
      this.rank(stand, lists + j * length, width)
      arena.views.wholes[cells + first + j] = lists + j * length
    }
    return lists + (t - first) * length
  }

  /** Puts the best leg of each place in front of a list that has Q of every leg. */
  private rank(stand: Stand, list: number, width: number): void {
    const { reals } = this
    let k = -1
    for (let i = 0; i < stand.legs.length; i++) {
      if (i === 0 || stand.legs[i]!.place !== stand.legs[i - 1]!.place) {
        k++
        reals[list + 2 * k] = -1
      }
      const value = reals[list + 2 * width + i] as number
      if (value <= (reals[list + 2 * k + 1] as number) + tie) continue
      reals[list + 2 * k] = i
      reals[list + 2 * k + 1] = value
    }
  }

  private get reals(): Float64Array {
    return this.arena.views.reals
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

/** Chances that at most 0, 1, … 19 tries fail before one succeeds. */
const chancesOf = (success: number): number[] => Array.from({ length: 20 }, (_, k) => 1 - (1 - success) ** (k + 1))
