import { tie } from '../plan/finishes.ts'
import type { Choices } from './choices.ts'
import { type Ground, unlimited } from './ground.ts'
import { Holding } from './holding.ts'
import { collecting, finishing, type PlayedLeg, type Player, type Stand, scoring } from './player.ts'
import type { Quantiles } from './quantiles.ts'
import type { Setup } from './setup.ts'
import type { MatchEvent } from './types.ts'
import { perWord, purposes, Words } from './words.ts'

/** What a robot waits for: a decision, its arrival, the end of its leg, the next piece of its leg. */
const deciding = 0
const arriving = 1
const ending = 2
const placing = 3
/** Its turn at a place, a restock, nothing any more. */
const queueing = 4
const drained = 5
const defending = 6
const idle = 7
const over = 8

const never = Number.POSITIVE_INFINITY
/** Times are compared with this (s). */
const instant = 1e-9
/** What is not worth more than this is not begun (points). */
const nothing = 1e-12

/**
 * One match of six robots after the other, each a function of seed and replicate. Robots 0–2 are ours, 3–5 theirs; times are
 * elapsed seconds since the match's start. Each robot waits for at most one thing, so that the next event is the earliest
 * of six, and nothing is allocated in a match.
 *
 * Source: section 5 of the model; the clock and the order of simultaneous events as in any event-scheduling simulation
 * (Law, Simulation Modeling and Analysis, 5th ed., section 1.3).
 */
export class Simulator {
  readonly ground: Ground
  readonly setup: Setup
  readonly holding: Holding
  /** By robot: points of its own, whether it played, seconds spent marking. */
  readonly points = new Float64Array(6)
  readonly played = new Uint8Array(6)
  readonly defended = new Float64Array(6)
  readonly minorFouls = new Int32Array(6)
  readonly majorFouls = new Int32Array(6)
  /** By robot and place: pieces placed, finishes achieved, pieces taken, and seconds waited. */
  readonly placed: Int32Array
  readonly taken: Int32Array
  readonly waited: Float64Array
  /** By alliance and place: pieces on a goal, or achieved finishes. */
  readonly counts: Int32Array
  /** Told of everything that a replay shows; null while matches are only counted. */
  log: ((event: MatchEvent) => void) | null = null
  /** By alliance: points earned until the end of autonomous, hold points apart. */
  readonly autoPoints = new Float64Array(2)

  private readonly words: Words
  private readonly players: readonly Player[]
  private readonly robotWords = new Uint32Array(6 * 8)
  private readonly legWords: Uint32Array
  private readonly wordsPerLeg: number

  private readonly at = new Float64Array(6)
  private readonly order = new Float64Array(6)
  private readonly what = new Uint8Array(6)
  private readonly stopAt = new Float64Array(6)
  private readonly form = new Float64Array(6)
  private readonly legNumber = new Int32Array(6)
  private readonly startedAt = new Float64Array(6)
  private readonly arrivedAt = new Float64Array(6)
  private readonly wholeTime = new Float64Array(6)
  private readonly load = new Int32Array(6)
  private readonly markingSince = new Float64Array(6)
  private readonly stands: Stand[]
  private readonly legs: (PlayedLeg | null)[] = [null, null, null, null, null, null]
  /** Times at which the pieces of each robot's leg count, and how many have. */
  private readonly pieceAt: Float64Array
  private readonly mostPieces: number
  private readonly counted = new Int32Array(6)

  /** By alliance and place: robots at work; robots waiting, in their order. */
  private readonly busy: Int32Array
  private readonly queue: Int8Array
  private readonly queued: Int32Array
  /** By alliance and source: pieces left (shared ones under alliance 0), unlimited without end. */
  private readonly stock: Int32Array
  private readonly restockAt: Float64Array
  private restockNext = never
  private scheduled = 0
  private now = 0

  constructor(setup: Setup, seed: number) {
    const { ground, players } = setup
    this.setup = setup
    this.ground = ground
    this.players = players
    this.words = new Words(seed)
    this.holding = new Holding(ground)
    this.mostPieces = Math.max(1, ...players.map((player) => player.mostPieces))
    this.wordsPerLeg = 4 * Math.ceil((setup.mostWords + 8) / 4)
    this.legWords = new Uint32Array(6 * this.wordsPerLeg)
    this.pieceAt = new Float64Array(6 * this.mostPieces)
    this.stands = players.map((player) => player.initial)
    const { count } = ground
    this.placed = new Int32Array(6 * count)
    this.taken = new Int32Array(6 * count)
    this.waited = new Float64Array(6 * count)
    this.counts = new Int32Array(2 * count)
    this.busy = new Int32Array(2 * count)
    this.queue = new Int8Array(2 * count * 3)
    this.queued = new Int32Array(2 * count)
    this.stock = new Int32Array(2 * count)
    this.restockAt = new Float64Array(count)
  }

  /** Plays one match; what came of it is in the public numbers until the next. */
  play(replicate: number): void {
    this.begin(replicate)
    this.autonomous()
    this.teleop()
    this.buzzer()
  }

  private begin(replicate: number): void {
    const { ground, words, players, robotWords } = this
    words.begin(replicate)
    this.scheduled = 0
    this.points.fill(0)
    this.defended.fill(0)
    this.placed.fill(0)
    this.taken.fill(0)
    this.waited.fill(0)
    this.counts.fill(0)
    this.autoPoints.fill(0)
    this.busy.fill(0)
    this.queued.fill(0)
    this.holding.begin()
    const length = ground.clock.end
    for (let i = 0; i < 6; i++) {
      const player = players[i] as Player
      words.fill(robotWords, 8 * i, 8, { robot: i, purpose: purposes.match, leg: 0 })
      const { reliability } = player.option.robot
      this.played[i] = this.uniform(8 * i) < reliability.absent ? 0 : 1
      this.stopAt[i] = this.uniform(8 * i + 1) < reliability.stops ? this.uniform(8 * i + 2) * length : never
      this.form[i] = player.form ? drawn(player.form, robotWords[8 * i + 3] as number) : 1
      this.what[i] = over
      this.at[i] = never
      this.legNumber[i] = 0
      this.stands[i] = player.initial
      this.load[i] = player.initial.load
    }
    this.fillStocks()
  }

  /** A uniform number of the robots' own words, strictly between 0 and 1. */
  private uniform(at: number): number {
    return ((this.robotWords[at] as number) + 0.5) * perWord
  }

  private fillStocks(): void {
    const { ground, stock, setup } = this
    const { count, sources } = ground
    for (let a = 0; a < 2; a++)
      for (let p = 0; p < sources; p++) {
        const given = ground.stock[p] as number
        stock[a * count + p] = given < 0 ? unlimited : given
      }
    for (let i = 0; i < 6; i++) {
      if (this.played[i] === 0) continue
      for (const { place, count: pieces } of setup.takes[i] as Setup['takes'][number]) {
        const at = this.stockOf(i, place)
        stock[at] = Math.max(0, (stock[at] as number) - pieces)
      }
    }
    this.restockNext = never
    for (let p = 0; p < sources; p++) {
      this.restockAt[p] = ground.every[p] as number
      this.restockNext = Math.min(this.restockNext, this.restockAt[p] as number)
    }
  }

  private stockOf(robot: number, place: number): number {
    return (this.ground.shared[place] || robot < 3 ? 0 : this.ground.count) + place
  }

  /** Steps of all routines in the order of their times, then of the robots. */
  private autonomous(): void {
    const { setup, ground } = this
    for (let i = 0; i < 6; i++) {
      if (this.played[i] === 0) continue
      const player = this.players[i] as Player
      const leaves = this.uniform(8 * i + 4) < (setup.leaves[i] as number)
      if (leaves) this.earnInAuto(i, ground.game.leave?.points ?? 0)
      setup.clean[i] = 1
      if (player.autoWords > 0)
        this.words.fill(setup.autoWords, setup.autoWordsAt[i] as number, player.autoWords, {
          robot: i,
          purpose: purposes.autonomous,
          leg: 0,
        })
    }
    for (const step of setup.steps) {
      const { robot: i, place } = step
      if (this.played[i] === 0 || (this.stopAt[i] as number) < step.at) continue
      if (step.needsPrevious && setup.clean[i] === 0) continue
      let successes = 0
      for (let k = 0; k < step.count; k++)
        if (((setup.autoWords[step.word + k] as number) + 0.5) * perWord < step.success) successes++
      setup.clean[i] = successes === step.count ? 1 : 0
      for (let k = 0; k < successes; k++)
        if (this.put(i, place, step.at)) this.earnInAuto(i, ground.auto[place] as number)
    }
    this.holding.endAuto()
  }

  private earnInAuto(i: number, points: number): void {
    const a = i < 3 ? 0 : 1
    this.points[i] = (this.points[i] as number) + points
    this.autoPoints[a] = (this.autoPoints[a] as number) + points
  }

  /** One successful piece: whether there was room for it. */
  private put(i: number, place: number, time: number): boolean {
    const { ground, counts } = this
    const a = i < 3 ? 0 : 1
    const at = a * ground.count + place
    if ((counts[at] as number) >= (ground.capacity[place] as number)) return false
    counts[at] = (counts[at] as number) + 1
    this.placed[i * ground.count + place] = (this.placed[i * ground.count + place] as number) + 1
    const h = this.setup.holdOf[place] as number
    if (h >= 0) this.holding.place(h, a, time)
    this.log?.({ kind: 'places', at: time, robot: i, place: ground.ids[place] as string })
    return true
  }

  private teleop(): void {
    const { clock } = this.ground
    this.now = clock.teleop
    while (this.restockNext <= clock.teleop + instant) this.restock()
    for (let i = 0; i < 6; i++) {
      if (this.played[i] === 0) continue
      if ((this.stopAt[i] as number) <= clock.teleop) this.played[i] = 2
      else this.schedule(i, deciding, clock.teleop)
    }
    const { at, order } = this
    const last = clock.end + instant
    for (;;) {
      let next = 0
      let time = at[0] as number
      for (let i = 1; i < 6; i++) {
        const other = at[i] as number
        if (other < time || (other === time && (order[i] as number) < (order[next] as number))) {
          time = other
          next = i
        }
      }
      if (this.restockNext <= time) {
        if (this.restockNext > last) return
        this.now = this.restockNext
        this.restock()
        continue
      }
      if (time > last) return
      this.now = time
      this.happen(next)
    }
  }

  private happen(i: number): void {
    if (this.now >= (this.stopAt[i] as number)) this.stop(i)
    else
      switch (this.what[i]) {
        case deciding:
        case idle:
          this.decide(i)
          break
        case defending:
          this.endMarking(i)
          this.decide(i)
          break
        case arriving:
          this.arrive(i)
          break
        case placing:
          this.placeNext(i)
          break
        case ending:
          this.end(i)
          break
        default:
          throw new Error(`robot ${i} has no event to happen`)
      }
  }

  /** What a robot waits for, and when: a stop that comes before takes its place. */
  private schedule(i: number, what: number, time: number): void {
    this.what[i] = what
    this.at[i] = Math.min(time, this.stopAt[i] as number)
    this.order[i] = this.scheduled++
  }

  // Decisions

  private decide(i: number): void {
    const { setup, now } = this
    const left = this.ground.clock.end - now
    const until = setup.defendsUntil[i] as number
    if (left <= (setup.defendsFrom[i] as number) + instant && left > until + instant) {
      this.markingSince[i] = now
      this.log?.({ kind: 'marks', at: now, robot: i, until: this.ground.clock.end - until })
      this.schedule(i, defending, this.ground.clock.end - until)
      return
    }
    const slowdown = this.slowdownOf(i)
    const choices =
      slowdown === 0 ? (this.players[i] as Player).choices : (this.players[i] as Player).choicesAt(slowdown)
    const stand = this.stands[i] as Stand
    const t = steps(left)
    const room = this.roomOf(i, choices)
    const best = choices.best(stand, room, t)
    if (best >= 0) {
      const leg = stand.legs[best] as PlayedLeg
      if (this.possible(i, leg)) {
        this.start(i, leg, slowdown)
        return
      }
    } else if (stand.planned >= 0) {
      this.rest(i, never)
      return
    }
    this.decideAmongPossible(i, choices, { room, t, slowdown })
  }

  private decideAmongPossible(i: number, choices: Choices, at: { room: number; t: number; slowdown: number }): void {
    const stand = this.stands[i] as Stand
    const list = choices.list(stand, at.room, at.t)
    const end = list + choices.width(stand)
    let best = -1
    let most = nothing
    let restock = never
    for (let place = list; place < end; place++) {
      const index = choices.leg(place)
      if (index < 0) continue
      const leg = stand.legs[index] as PlayedLeg
      if (this.possible(i, leg)) {
        if (choices.value(place) > most + (best < 0 ? 0 : tie)) {
          best = index
          most = choices.value(place)
        }
      } else if (leg.kind === collecting) restock = Math.min(restock, this.restockAt[leg.place] as number)
    }
    if (best >= 0) this.start(i, stand.legs[best] as PlayedLeg, at.slowdown)
    else this.rest(i, restock)
  }

  /** Nothing to do until a restock, the own defence or the call, if one of them is still to come. */
  private rest(i: number, restock: number): void {
    const { end } = this.ground.clock
    let time = restock
    const opens = end - (this.setup.defendsFrom[i] as number)
    const call = end - (this.setup.callAt[i] as number)
    if (opens > this.now + instant) time = Math.min(time, opens)
    if (call > this.now + instant) time = Math.min(time, call)
    this.log?.({ kind: 'rests', at: this.now, robot: i })
    this.schedule(i, idle, time)
  }

  private possible(i: number, { kind, place }: PlayedLeg): boolean {
    const at = (i < 3 ? 0 : this.ground.count) + place
    if (kind === collecting) return (this.stock[this.stockOf(i, place)] as number) >= 1
    if (kind === finishing) return (this.busy[at] as number) < (this.ground.slots[place] as number)
    return (this.counts[at] as number) < (this.ground.capacity[place] as number)
  }

  /** Index of the room left for the alliance, as a robot's plan counts it. */
  private roomOf(i: number, { problem }: Choices): number {
    const { rooms, graph } = problem
    const { ground, counts } = this
    let index = 0
    for (let d = 0; d < rooms.goals.length; d++) {
      const place = (this.players[i] as Player).placeOfGoal[rooms.goals[d] as number] as number
      const room = (ground.capacity[place] as number) - (counts[(i < 3 ? 0 : ground.count) + place] as number)
      index += Math.min(room, rooms.most[d] as number) * (rooms.strides[d] as number)
    }
    return graph.goals.length === 0 ? 0 : index
  }

  private slowdownOf(i: number): number {
    const markers = this.setup.markers[i] as readonly number[]
    let most = 0
    for (let k = 0; k < markers.length; k++) {
      const j = markers[k] as number
      if (this.what[j] === defending) most = Math.max(most, this.setup.slowdown[j] as number)
    }
    return most
  }

  // Legs

  private start(i: number, leg: PlayedLeg, slowdown: number): void {
    const player = this.players[i] as Player
    const { program } = leg
    const words = i * this.wordsPerLeg
    this.words.fill(this.legWords, words, leg.words, {
      robot: i,
      purpose: purposes.leg,
      leg: (this.legNumber[i] as number)++,
    })
    this.legs[i] = leg
    this.startedAt[i] = this.now
    const form = this.form[i] as number
    let drive = 0
    if (program.whole) {
      const whole = form * drawn(program.whole, this.legWords[words] as number)
      this.wholeTime[i] = whole
      drive = whole / 2
    } else if (leg.drive > 0)
      drive = form * leg.drive * (1 + slowdown) * drawn(player.pace, this.legWords[words] as number)
    this.log?.({
      kind: 'drives',
      at: this.now,
      robot: i,
      from: leg.from.at,
      to: leg.spot,
      until: this.now + drive,
      place: this.ground.ids[leg.place] as string,
      load: leg.from.load,
    })
    this.schedule(i, arriving, this.now + drive)
  }

  private arrive(i: number): void {
    const { place, kind } = this.legs[i] as PlayedLeg
    const at = (i < 3 ? 0 : this.ground.count) + place
    this.arrivedAt[i] = this.now
    if ((this.busy[at] as number) < (this.ground.slots[place] as number)) {
      this.busy[at] = (this.busy[at] as number) + 1
      this.grant(i)
    } else if (kind === finishing) this.again(i, this.load[i] as number)
    else {
      this.log?.({ kind: 'queues', at: this.now, robot: i, place: this.ground.ids[place] as string })
      this.queue[3 * at + (this.queued[at] as number)] = i
      this.queued[at] = (this.queued[at] as number) + 1
      this.schedule(i, queueing, never)
    }
  }

  /** Decides anew from where the leg has led. */
  private again(i: number, load: number): void {
    this.stands[i] = (this.players[i] as Player).after(this.legs[i] as PlayedLeg, load)
    this.load[i] = load
    this.legs[i] = null
    this.decide(i)
  }

  private grant(i: number): void {
    const leg = this.legs[i] as PlayedLeg
    this.addWait(i, leg.place, this.arrivedAt[i] as number)
    if (leg.kind === collecting) this.take(i, leg)
    else if (leg.kind === scoring && !this.possible(i, leg)) {
      this.free(i, leg.place)
      this.again(i, leg.load)
    } else this.work(i, leg, leg.load)
  }

  private addWait(i: number, place: number, since: number): void {
    const at = i * this.ground.count + place
    this.waited[at] = (this.waited[at] as number) + this.now - since
  }

  /** At a source with a slot: takes what there is, waits for more, or gives up. */
  private take(i: number, leg: PlayedLeg): void {
    const at = this.stockOf(i, leg.place)
    const there = this.stock[at] as number
    if (there > 0) {
      const pieces = Math.min(leg.load, there)
      if (there < unlimited) this.stock[at] = there - pieces
      this.taken[i * this.ground.count + leg.place] = (this.taken[i * this.ground.count + leg.place] as number) + pieces
      this.work(i, leg, pieces)
    } else if (this.waitsFor(i, leg)) {
      this.arrivedAt[i] = this.now
      this.log?.({ kind: 'waits', at: this.now, robot: i, place: this.ground.ids[leg.place] as string })
      this.schedule(i, drained, never)
    } else {
      this.free(i, leg.place)
      this.again(i, 0)
    }
  }

  /** Whether waiting at an empty source for its restock is worth at least as much as anything else that can be begun. */
  private waitsFor(i: number, leg: PlayedLeg): boolean {
    const restock = this.restockAt[leg.place] as number
    if (restock === never) return false
    const { end } = this.ground.clock
    const player = this.players[i] as Player
    const slowdown = this.slowdownOf(i)
    const choices = player.choicesAt(slowdown)
    const stand = player.after(leg, 0)
    const room = this.roomOf(i, choices)
    const list = choices.list(stand, room, steps(end - this.now))
    let most = 0
    for (let place = list; place < list + choices.width(stand); place++) {
      const index = choices.leg(place)
      if (index >= 0 && this.possible(i, stand.legs[index] as PlayedLeg)) most = Math.max(most, choices.value(place))
    }
    if (most <= nothing) return true
    const then = end - restock
    if (then < 0) return false
    const same = stand.legs.findIndex(
      (other) => other.place === leg.place && other.spot === leg.spot && other.load === leg.load,
    )
    return choices.q(stand, same, room, steps(then)) >= most
  }

  /** Plays the stages: from the grant on those that need the robot in place, the others from the leg's start. */
  private work(i: number, leg: PlayedLeg, load: number): void {
    this.load[i] = load
    const start = this.startedAt[i] as number
    const form = this.form[i] as number
    const { program } = leg
    const base = i * this.mostPieces
    this.counted[i] = 0
    let end = 0
    if (program.whole) end = this.now + (this.wholeTime[i] as number) / 2
    else end = start + this.playStages(i, leg, load)
    if (leg.retry) end += form * this.retries(i, leg)
    if (leg.kind === finishing) end = Math.max(end, this.ground.clock.endgame)
    this.log?.({ kind: 'works', at: this.now, robot: i, place: this.ground.ids[leg.place] as string, until: end, load })
    if (leg.kind !== scoring || program.lastEach === 0) {
      if (leg.kind === scoring) for (let k = 0; k < load; k++) this.pieceAt[base + k] = end
      this.schedule(i, ending, end)
    } else if (this.setup.matters[leg.place] && load > 1) this.schedule(i, placing, this.pieceAt[base] as number)
    else this.schedule(i, ending, end)
  }

  private readonly finished = new Float64Array(256)

  private playStages(i: number, { program }: PlayedLeg, load: number): number {
    const { finished, legWords, pieceAt } = this
    const { order, firstOf, waitsFor, wordOf, tables, each, lastEach } = program
    const words = i * this.wordsPerLeg
    const start = this.startedAt[i] as number
    const form = this.form[i] as number
    let last = this.now - start
    finished[0] = last
    for (let k = 0; k < order.length; k++) {
      const s = order[k] as number
      let begun = 0
      for (let w = firstOf[s] as number; w < (firstOf[s + 1] as number); w++) {
        const before = finished[waitsFor[w] as number] as number
        if (before > begun) begun = before
      }
      const { values, scale } = tables[s] as Quantiles
      const word = words + (wordOf[s] as number)
      if (each[s] === 0) begun += form * (values[((legWords[word] as number) * scale) | 0] as number)
      else
        for (let n = 0; n < load; n++) {
          begun += form * (values[((legWords[word + n] as number) * scale) | 0] as number)
          if (s === lastEach) pieceAt[i * this.mostPieces + n] = start + begun
        }
      finished[s] = begun
      if (begun > last) last = begun
    }
    return last
  }

  private readonly retryWords = new Uint32Array(24)

  /** Time of min(K, 20) retries (s), K geometric. */
  private retries(i: number, { success, retry }: PlayedLeg): number {
    const { retryWords } = this
    this.words.fill(retryWords, 0, 4, { robot: i, purpose: purposes.retries, leg: this.legNumber[i] as number })
    const u = ((retryWords[0] as number) + 0.5) * perWord
    if (u < success) return 0
    const tries = success > 0 ? Math.min(20, Math.floor(Math.log1p(-u) / Math.log1p(-success))) : 20
    if (tries > 3)
      this.words.fill(retryWords, 0, tries + 1, {
        robot: i,
        purpose: purposes.retries,
        leg: this.legNumber[i] as number,
      })
    let time = 0
    for (let k = 1; k <= tries; k++) time += drawn(retry as Quantiles, retryWords[k] as number)
    return time
  }

  private placeNext(i: number): void {
    const leg = this.legs[i] as PlayedLeg
    const base = i * this.mostPieces
    this.countPieces(i, leg, this.now)
    const next = this.counted[i] as number
    const left = (this.load[i] as number) - next
    this.schedule(i, left > 1 ? placing : ending, this.pieceAt[base + next] as number)
  }

  /** Pieces of the leg in hand that are due by now: each a success or not, while there is room. */
  private countPieces(i: number, leg: PlayedLeg, now: number): void {
    const base = i * this.mostPieces
    const words = i * this.wordsPerLeg + leg.program.words
    for (let k = this.counted[i] as number; k < (this.load[i] as number); k++) {
      const time = this.pieceAt[base + k] as number
      if (time > now) return
      this.counted[i] = k + 1
      if (((this.legWords[words + k] as number) + 0.5) * perWord >= leg.success) continue
      if (this.put(i, leg.place, time))
        this.points[i] = (this.points[i] as number) + (this.ground.teleop[leg.place] as number)
    }
  }

  private end(i: number): void {
    const leg = this.legs[i] as PlayedLeg
    if (leg.kind === finishing) {
      this.finish(i, leg)
      return
    }
    if (leg.kind === scoring) this.countPieces(i, leg, this.now)
    const load = leg.kind === scoring ? 0 : (this.load[i] as number)
    this.stands[i] = (this.players[i] as Player).after(leg, load)
    this.load[i] = load
    this.legs[i] = null
    this.free(i, leg.place)
    this.decide(i)
  }

  private finish(i: number, leg: PlayedLeg): void {
    const word = this.legWords[i * this.wordsPerLeg + leg.program.words] as number
    const place = (word + 0.5) * perWord < leg.success ? leg.place : leg.otherwise
    this.schedule(i, over, never)
    // What is achieved stays: a robot that stops afterwards stops where it is.
    this.stopAt[i] = never
    this.at[i] = never
    this.legs[i] = null
    this.log?.({
      kind: 'finishes',
      at: this.now,
      robot: i,
      place: place < 0 ? null : (this.ground.ids[place] as string),
    })
    if (place < 0) return
    const at = (i < 3 ? 0 : this.ground.count) + place
    this.counts[at] = (this.counts[at] as number) + 1
    this.placed[i * this.ground.count + place] = 1
    this.points[i] = (this.points[i] as number) + (this.ground.finishPoints[place] as number)
  }

  /** Gives up a slot; whoever waits for it gets it. */
  private free(i: number, place: number): void {
    const at = (i < 3 ? 0 : this.ground.count) + place
    const waiting = this.queued[at] as number
    if (waiting === 0) {
      this.busy[at] = (this.busy[at] as number) - 1
      return
    }
    const next = this.queue[3 * at] as number
    this.leaveQueue(at, 0)
    this.grant(next)
  }

  private leaveQueue(at: number, index: number): void {
    const count = (this.queued[at] as number) - 1
    this.queued[at] = count
    for (let k = index; k < count; k++) this.queue[3 * at + k] = this.queue[3 * at + k + 1] as number
  }

  /** All sources that are due: stock first, then those who wait for it, in the order in which they began to. */
  private restock(): void {
    const { ground, restockAt, stock, now } = this
    const time = this.restockNext
    for (let p = 0; p < ground.sources; p++) {
      if (restockAt[p] !== time) continue
      restockAt[p] = time + (ground.every[p] as number)
      for (let a = 0; a < (ground.shared[p] ? 1 : 2); a++) {
        const at = a * ground.count + p
        stock[at] = (stock[at] as number) + (ground.size[p] as number)
      }
    }
    this.restockNext = never
    for (let p = 0; p < ground.sources; p++) this.restockNext = Math.min(this.restockNext, restockAt[p] as number)
    if (now > ground.clock.teleop) this.serve(time)
  }

  private serve(time: number): void {
    const { what, order } = this
    const before = this.scheduled
    for (;;) {
      let next = -1
      for (let i = 0; i < 6; i++)
        if (what[i] === drained && (order[i] as number) < before && this.isDue(i, time))
          if (next < 0 || (order[i] as number) < (order[next] as number)) next = i
      if (next < 0) return
      const leg = this.legs[next] as PlayedLeg
      this.addWait(next, leg.place, this.arrivedAt[next] as number)
      this.take(next, leg)
    }
  }

  private isDue(i: number, time: number): boolean {
    const { place } = this.legs[i] as PlayedLeg
    return this.restockAt[place] === time + (this.ground.every[place] as number)
  }

  // Ends

  private endMarking(i: number): void {
    this.defended[i] = (this.defended[i] as number) + this.now - (this.markingSince[i] as number)
  }

  /** For good: the leg in hand is lost, what counted before stays. */
  private stop(i: number): void {
    const leg = this.legs[i]
    const what = this.what[i] as number
    if (what === defending) this.endMarking(i)
    this.played[i] = 2
    this.log?.({ kind: 'stops', at: this.now, robot: i })
    this.what[i] = over
    this.at[i] = never
    if (!leg) return
    this.legs[i] = null
    const at = (i < 3 ? 0 : this.ground.count) + leg.place
    if (what === queueing) {
      for (let k = 0; k < (this.queued[at] as number); k++) if (this.queue[3 * at + k] === i) this.leaveQueue(at, k)
    } else if (what === drained) this.addWait(i, leg.place, this.arrivedAt[i] as number)
    if (what === queueing) this.addWait(i, leg.place, this.arrivedAt[i] as number)
    if (what === ending || what === placing) {
      if (leg.kind === scoring) this.countPieces(i, leg, this.now)
    }
    if (what === ending || what === placing || what === drained) this.free(i, leg.place)
  }

  /** Pieces under way that counted in time; waiting and marking that the buzzer ends. */
  private buzzer(): void {
    const { end } = this.ground.clock
    this.now = end
    for (let i = 0; i < 6; i++) {
      const leg = this.legs[i]
      const what = this.what[i] as number
      if (what === defending) this.endMarking(i)
      if (leg) {
        if (what === queueing || what === drained) this.addWait(i, leg.place, this.arrivedAt[i] as number)
        if ((what === ending || what === placing) && leg.kind === scoring) this.countPieces(i, leg, end + instant)
        this.legs[i] = null
      }
      this.fouls(i)
    }
    this.holding.end()
  }

  private fouls(i: number): void {
    const { fouls, defence } = (this.players[i] as Player).option.robot
    const minutes = (this.defended[i] as number) / 60
    const plays = this.played[i] !== 0
    this.minorFouls[i] = plays
      ? poisson(fouls.minorPerMatch + defence.minorPerMinute * minutes, this.uniform(8 * i + 5))
      : 0
    this.majorFouls[i] = plays
      ? poisson(fouls.majorPerMatch + defence.majorPerMinute * minutes, this.uniform(8 * i + 6))
      : 0
  }
}

const drawn = ({ values, scale }: Quantiles, word: number): number => values[(word * scale) | 0] as number

/** Whole steps of the plan's grid in a time left. */
const steps = (left: number): number => (left <= 0 ? 0 : Math.floor(left * 10 + instant))

/** Inverse of the Poisson distribution's cdf; rates are small. */
function poisson(rate: number, u: number): number {
  let term = Math.exp(-rate)
  let sum = term
  let k = 0
  while (u > sum && k < 1000) {
    k++
    term *= rate / k
    sum += term
  }
  return k
}
