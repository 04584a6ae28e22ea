import { type Ground, unlimited } from './ground.ts'
import { at } from './kernel/layout.ts'
import { ObservedPlayer } from './observed.ts'
import type { Player } from './player.ts'
import type { Quantiles } from './quantiles.ts'
import type { Seats } from './seats.ts'
import type { Setup } from './setup.ts'
import { eventOf } from './told.ts'
import type { MatchEvent } from './types.ts'
import { perWord, purposes } from './words.ts'

const never = 1e300

/**
 * One match of six robots after the other, each a function of seed and replicate: autonomous here, teleop in the event loop
 * of the kernel. Robots 0–2 are ours, 3–5 theirs. What came of a match stands in the public numbers until the next one.
 */
export class Simulator {
  readonly ground: Ground
  readonly setup: Setup
  /** By robot: points of its own, whether it played, seconds spent marking, fouls. */
  readonly points = new Float64Array(6)
  readonly played = new Uint8Array(6)
  readonly defended = new Float64Array(6)
  readonly minorFouls = new Int32Array(6)
  readonly majorFouls = new Int32Array(6)
  /** By robot and place: pieces placed, finishes achieved; pieces taken; seconds waited. */
  readonly placed: Int32Array
  readonly taken: Int32Array
  readonly waited: Float64Array
  /** By alliance and place: pieces on a goal, or achieved finishes. */
  readonly counts: Int32Array
  /** By alliance: points earned until the end of autonomous, hold points apart. */
  readonly autoPoints = new Float64Array(2)
  /** Of hold goal h and alliance a at 2 · h + a: pieces, seconds held, points, points until the end of autonomous. */
  readonly heldPieces: Int32Array
  readonly heldSeconds: Float64Array
  readonly heldPoints: Float64Array
  readonly heldAutoPoints: Float64Array
  /** Seconds after their placing in which a piece more mattered, summed over the pieces. */
  readonly heldMarginal: Float64Array
  /** Told of everything that a replay shows; null while matches are only counted. */
  log: ((event: MatchEvent) => void) | null = null

  private readonly seats: Seats
  private replicate = 0
  private readonly robots: readonly { player: Player; stand: number; leaves: number }[]
  private readonly fixed: () => void

  constructor(setup: Setup, seed: number) {
    const { ground, players, seats } = setup
    const { count } = ground
    const holds = 2 * ground.holds.length
    this.setup = setup
    this.ground = ground
    this.seats = seats
    this.placed = new Int32Array(6 * count)
    this.taken = new Int32Array(6 * count)
    this.waited = new Float64Array(6 * count)
    this.counts = new Int32Array(2 * count)
    this.heldPieces = new Int32Array(holds)
    this.heldSeconds = new Float64Array(holds)
    this.heldPoints = new Float64Array(holds)
    this.heldAutoPoints = new Float64Array(holds)
    this.heldMarginal = new Float64Array(holds)
    this.robots = players.map((player, i) => ({
      player,
      stand: seats.seat(player).numbers.get(player.initial) as number,
      leaves: setup.leaves[i] as number,
    }))
    this.fixed = this.fixedNumbers(seed)
  }

  /** Plays one match; what came of it is in the public numbers until the next. */
  play(replicate: number): void {
    const { arena } = this.seats
    if (arena.owner !== this) {
      arena.owner = this
      this.fixed()
    }
    this.begin(replicate)
    this.autonomous()
    this.seats.teller = this.log && this.tell
    arena.play(replicate, this.log !== null)
    this.read()
    this.fouls()
  }

  /** Writes what is the same in all matches of the set-up. */
  private fixedNumbers(seed: number): () => void {
    const { ground, setup, seats } = this
    const { players } = setup
    const { arena } = seats
    const words = 8 * Math.ceil((setup.mostWords + 8) / 8)
    const wordsAt = players.map(() => arena.wholes(words))
    const piecesAt = players.map((player) => arena.reals(player.mostPieces + 1))
    const minds = players.flatMap((player, i) => this.mindsOf(player, i))
    const paces = players.flatMap((player) => [...seats.seat(player).pace])
    return () => {
      const { reals, wholes } = arena.views
      reals[at.teleopAt] = ground.clock.teleop
      reals[at.endsAt] = ground.clock.end
      reals[at.endgameAt] = ground.clock.endgame
      wholes[at.places] = ground.count
      wholes[at.sources] = ground.sources
      wholes[at.holds] = ground.holds.length
      wholes[at.key] = (seed % 2 ** 32) | 0
      wholes[at.key + 1] = Math.floor(seed / 2 ** 32) | 0
      wholes.set(ground.slots, at.slots)
      wholes.set(ground.capacity, at.capacity)
      wholes.set(ground.shared, at.shared)
      wholes.set(ground.size, at.size)
      reals.set(ground.every.map(bounded), at.every)
      reals.set(ground.teleop, at.teleopPoints)
      reals.set(ground.finishPoints, at.finishPoints)
      wholes.set(setup.matters, at.matters)
      wholes.set(setup.holdOf, at.holdOf)
      for (const [h, place] of ground.holds.entries()) reals[at.holdRate + h] = ground.teleopPerSecond[place] as number
      reals.set(setup.defendsFrom, at.defendsFrom)
      reals.set(setup.defendsUntil, at.defendsUntil)
      reals.set(setup.callAt, at.callAt)
      wholes.set(paces, at.pace)
      wholes.set(wordsAt, at.legWordsOf)
      wholes.set(piecesAt, at.piecesOf)
      wholes.set(minds, at.minds)
    }
  }

  /** Up to three markers with the mind under each, the strongest first; the own mind last. */
  private mindsOf(player: Player, i: number): number[] {
    const { setup, seats } = this
    const out = [-1, 0, -1, 0, -1, 0, 0, seats.mind(player, 0)]
    const markers = [...(setup.markers[i] as readonly number[])]
    markers.sort((a, b) => (setup.slowdown[b] as number) - (setup.slowdown[a] as number) || a - b)
    for (const [k, marker] of markers.entries()) {
      out[2 * k] = marker
      out[2 * k + 1] = seats.mind(player, setup.slowdown[marker] as number)
    }
    return out
  }

  private begin(replicate: number): void {
    const { ground, points, counts, placed } = this
    const { reals, wholes } = this.seats.arena.views
    this.replicate = replicate
    points.fill(0)
    counts.fill(0)
    placed.fill(0)
    this.autoPoints.fill(0)
    this.heldPieces.fill(0)
    this.seats.arena.clear(replicate)
    const length = ground.clock.end
    for (let i = 0; i < 6; i++) {
      const { player, stand } = this.robots[i]!
      const observed = player instanceof ObservedPlayer ? player : null
      if (observed) this.seats.meet(observed, replicate)
      const reliability = observed?.now ?? player.option.robot.reliability
      this.played[i] = this.uniform(8 * i) < reliability.absent ? 0 : 1
      reals[at.stopAt + i] = this.uniform(8 * i + 1) < reliability.stops ? this.uniform(8 * i + 2) * length : never
      if (observed) {
        reals[at.form + i] = observed.now.form(this.uniform(8 * i + 3))
        reals[at.callAt + i] = observed.now.departs
      } else reals[at.form + i] = player.form ? drawn(player.form, this.word(at.matchWords + 8 * i + 3)) : 1
      wholes[at.stand + i] = stand
      wholes[at.load + i] = player.initial.load
    }
    this.fillStocks()
  }

  private word(place: number): number {
    return this.seats.arena.views.words[place] as number
  }

  /** A uniform number of the robots' own words, strictly between 0 and 1. */
  private uniform(place: number): number {
    return (this.word(at.matchWords + place) + 0.5) * perWord
  }

  private fillStocks(): void {
    const { ground, setup } = this
    const { wholes, reals } = this.seats.arena.views
    const { count, sources } = ground
    for (let p = 0; p < sources; p++) {
      const given = ground.stock[p] as number
      wholes[at.stock + p] = given < 0 ? unlimited : given
      wholes[at.stock + count + p] = given < 0 ? unlimited : given
      reals[at.restockAt + p] = bounded(ground.every[p] as number)
    }
    for (let i = 0; i < 6; i++) {
      if (this.played[i] === 0) continue
      const takes = setup.takes[i] as Setup['takes'][number]
      for (let k = 0; k < takes.length; k++) {
        const { place, count: pieces } = takes[k] as (typeof takes)[number]
        const stock = at.stock + place + (ground.shared[place] || i < 3 ? 0 : count)
        wholes[stock] = Math.max(0, (wholes[stock] as number) - pieces)
      }
    }
  }

  /** Steps of all routines in the order of their times, then of the robots. */
  private autonomous(): void {
    const { setup, ground, robots } = this
    const { reals, wholes } = this.seats.arena.views
    const leave = ground.game.leave?.points ?? 0
    for (let h = 0; h < ground.holds.length; h++) reals[at.heldSince + h] = 0
    for (const from of [at.heldSeconds, at.heldPoints, at.near, at.nearBefore])
      reals.fill(0, from, from + 2 * ground.holds.length)
    for (let i = 0; i < 6; i++) {
      if (this.played[i] === 0) continue
      const { player, leaves } = robots[i]!
      if (leave !== 0 && this.uniform(8 * i + 4) < leaves) {
        this.earnInAuto(i, leave)
        this.log?.({ kind: 'leaves', at: Math.min(ground.clock.auto, reals[at.stopAt + i] as number), robot: i })
      }
      setup.clean[i] = 1
      if (player.autoWords > 0)
        this.seats.arena.drawWords(
          setup.autoWordsAt[i] as number,
          player.autoWords,
          8 * i + purposes.autonomous,
          0,
          this.replicate,
        )
    }
    for (let s = 0; s < setup.steps.length; s++) {
      const step = setup.steps[s] as Setup['steps'][number]
      const { robot: i, place } = step
      if (this.played[i] === 0 || (reals[at.stopAt + i] as number) < step.at) continue
      if (step.needsPrevious && setup.clean[i] === 0) continue
      let successes = 0
      for (let k = 0; k < step.count; k++) if ((this.word(step.word + k) + 0.5) * perWord < step.success) successes++
      setup.clean[i] = successes === step.count ? 1 : 0
      for (let k = 0; k < successes; k++)
        if (this.put(i, place, step.at)) this.earnInAuto(i, ground.auto[place] as number)
    }
    for (let h = 0; h < ground.holds.length; h++) {
      this.settle(h, ground.clock.auto)
      reals[at.heldSince + h] = ground.clock.teleop
      for (let k = 2 * h; k < 2 * h + 2; k++) {
        this.heldAutoPoints[k] = reals[at.heldPoints + k] as number
        wholes[at.heldPieces + k] = this.heldPieces[k] as number
      }
    }
    wholes.set(this.counts, at.counts)
    wholes.set(this.placed, at.placed)
    wholes.set(this.played, at.played)
    reals.set(this.points, at.points)
  }

  private earnInAuto(i: number, points: number): void {
    const a = i < 3 ? 0 : 1
    this.points[i] = (this.points[i] as number) + points
    this.autoPoints[a] = (this.autoPoints[a] as number) + points
  }

  /** One successful piece of autonomous: whether there was room for it. */
  private put(i: number, place: number, time: number): boolean {
    const { ground, counts } = this
    const side = (i < 3 ? 0 : ground.count) + place
    if ((counts[side] as number) >= (ground.capacity[place] as number)) return false
    counts[side] = (counts[side] as number) + 1
    this.placed[i * ground.count + place] = (this.placed[i * ground.count + place] as number) + 1
    const h = this.setup.holdOf[place] as number
    if (h >= 0) {
      const { reals } = this.seats.arena.views
      const one = 2 * h + (i < 3 ? 0 : 1)
      this.settle(h, time)
      this.heldPieces[one] = (this.heldPieces[one] as number) + 1
      reals[at.nearBefore + one] = (reals[at.nearBefore + one] as number) + (reals[at.near + one] as number)
    }
    this.log?.({ kind: 'places', at: time, robot: i, place: ground.ids[place] as string })
    return true
  }

  /** As the event loop does in teleop, at autonomous's rates. */
  private settle(h: number, time: number): void {
    const { reals } = this.seats.arena.views
    const elapsed = time - (reals[at.heldSince + h] as number)
    reals[at.heldSince + h] = time
    const ours = 2 * h
    const lead = (this.heldPieces[ours] as number) - (this.heldPieces[ours + 1] as number)
    const rate = this.ground.autoPerSecond[this.ground.holds[h] as number] as number
    if (lead !== 0) {
      const one = lead > 0 ? ours : ours + 1
      add(reals, at.heldSeconds + one, elapsed)
      add(reals, at.heldPoints + one, elapsed * rate)
    }
    if (lead === 0 || lead === -1) add(reals, at.near + ours, elapsed)
    if (lead === 0 || lead === 1) add(reals, at.near + ours + 1, elapsed)
  }

  /** What the event loop left. */
  private read(): void {
    const { reals, wholes } = this.seats.arena.views
    const { points, placed, taken, waited, counts, played, defended } = this
    for (let k = 0; k < placed.length; k++) {
      placed[k] = wholes[at.placed + k] as number
      taken[k] = wholes[at.taken + k] as number
      waited[k] = reals[at.waited + k] as number
    }
    for (let k = 0; k < counts.length; k++) counts[k] = wholes[at.counts + k] as number
    for (let i = 0; i < 6; i++) {
      points[i] = reals[at.points + i] as number
      played[i] = wholes[at.played + i] as number
      defended[i] = reals[at.marked + i] as number
    }
    for (let k = 0; k < this.heldPieces.length; k++) {
      const pieces = wholes[at.heldPieces + k] as number
      this.heldPieces[k] = pieces
      this.heldSeconds[k] = reals[at.heldSeconds + k] as number
      this.heldPoints[k] = reals[at.heldPoints + k] as number
      this.heldMarginal[k] = pieces * (reals[at.near + k] as number) - (reals[at.nearBefore + k] as number)
    }
  }

  private fouls(): void {
    for (let i = 0; i < 6; i++) {
      const { fouls, defence } = this.robots[i]!.player.option.robot
      // An absent robot draws none.
      const matches = this.played[i] === 0 ? 0 : 1
      const minutes = (matches * (this.defended[i] as number)) / 60
      const minor = poisson(matches * fouls.minorPerMatch + minutes * defence.minorPerMinute, this.uniform(8 * i + 5))
      const major = poisson(matches * fouls.majorPerMatch + minutes * defence.majorPerMinute, this.uniform(8 * i + 6))
      this.minorFouls[i] = minor
      this.majorFouls[i] = major
      if (minor + major > 0) this.log?.({ kind: 'fouls', at: this.ground.clock.end, robot: i, minor, major })
    }
  }

  /** An event of the loop in the words of a replay. */
  private readonly tell = (
    kind: number,
    robot: number,
    from: number,
    to: number,
    place: number,
    more: number,
  ): void => {
    const leg = this.seats.legAt(place)
    const id = leg ? (this.ground.ids[leg.place] as string) : ''
    const event = eventOf({ kind, leg, id, until: to, more, ids: this.ground.ids })
    if (event) this.log?.({ at: from, robot, ...event } as MatchEvent)
  }
}

function add(reals: Float64Array, place: number, amount: number): void {
  reals[place] = (reals[place] as number) + amount
}

/** Infinity as the event loop writes it. */
const bounded = (x: number): number => Math.min(x, never)

const drawn = ({ values, scale }: Quantiles, word: number): number => values[(word * scale) | 0] as number

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
