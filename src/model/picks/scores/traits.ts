import type { Game } from '../../documents/types.ts'
import { normalCdf, normalDensity } from '../../scouting/statistics/index.ts'
import type { Rating } from './types.ts'

/** What is expected of an alliance, by draw: numbers that scores are regressed on. */
export interface Traits {
  /**
   * Sum of its robots' points alone and of sets, less that for which there is no room: robots beyond a finish's slots, and
   * pieces beyond a goal's capacity, apart from what their robots do with the time at their other goals.
   */
  expected: Float64Array
  /** By goal that pays by the second: pieces expected on it. */
  held: Float64Array[]
}

/** Which of a rating's draws each member is met with. */
export type DrawOf = (member: number) => number

/** What an alliance's traits are worked out from; made once for a game. */
export class TraitsOf {
  private readonly worth: readonly number[]
  private readonly room: readonly number[]
  private readonly finishes: readonly { index: number; slots: number; points: number }[]
  private readonly sets: readonly { needs: readonly (readonly [goal: number, count: number])[]; points: number }[]
  /** Goals that pay by the second: their places among the goals, and points of a whole match held. */
  readonly holds: readonly { index: number; points: number }[]
  private readonly placed: Float64Array
  private readonly own: Float64Array
  private readonly coming = new Float64Array(8)

  constructor(game: Game) {
    const { goals, clock } = game
    this.worth = goals.map(({ award }) => (award.kind === 'each' ? award.teleop : 0))
    this.room = goals.map(({ capacity }) => capacity ?? Number.POSITIVE_INFINITY)
    this.finishes = game.finishes.flatMap(({ slots, points }, index) => (slots < 3 ? [{ index, slots, points }] : []))
    this.sets = game.sets.map(({ needs, points }) => ({
      needs: Object.entries(needs).map(([id, count]) => [goals.findIndex((goal) => goal.id === id), count] as const),
      points,
    }))
    this.holds = goals.flatMap(({ award }, index) =>
      award.kind === 'hold' ? [{ index, points: award.teleopPerSecond * clock.teleop }] : [],
    )
    this.placed = new Float64Array(goals.length)
    this.own = new Float64Array(goals.length)
  }

  /** Traits by draw of an alliance, all members by the same draw. */
  by(members: readonly Rating[]): Traits {
    const draws = members[0]?.points.length ?? 0
    const traits = this.empty(draws)
    let at = 0
    const of = { members, draw: () => at }
    for (; at < draws; at++) this.write(traits, at, of)
    return traits
  }

  empty(draws: number): Traits {
    return {
      expected: new Float64Array(draws),
      held: this.holds.map(() => new Float64Array(draws)),
    }
  }

  write(traits: Traits, at: number, { members, draw }: { members: readonly Rating[]; draw: DrawOf }): void {
    const { placed } = this
    let points = 0
    placed.fill(0)
    for (let i = 0; i < members.length; i++) {
      const rating = members[i] as Rating
      const d = draw(i)
      points += rating.points[d] as number
      for (let g = 0; g < placed.length; g++) placed[g] = (placed[g] as number) + (rating.pieces[g]?.[d] as number)
    }
    points -= this.beyondSlots(members, draw) + this.beyondRoom(members, draw)
    for (let s = 0; s < this.sets.length; s++) {
      const { needs, points: each } = this.sets[s] as (typeof this.sets)[number]
      let times = Number.POSITIVE_INFINITY
      for (const [goal, count] of needs) times = Math.min(times, (placed[goal] as number) / count)
      // Half of a set is done on average when the match ends.
      points += each * Math.max(0, times - 0.5)
    }
    traits.expected[at] = points
    for (let h = 0; h < this.holds.length; h++)
      (traits.held[h] as Float64Array)[at] = placed[this.holds[h]?.index as number] as number
  }

  private beyondSlots(members: readonly Rating[], draw: DrawOf): number {
    const { coming } = this
    let points = 0
    for (let f = 0; f < this.finishes.length; f++) {
      const { index, slots, points: each } = this.finishes[f] as (typeof this.finishes)[number]
      // Chances of each number of robots that come, one robot more at a time.
      coming.fill(0)
      coming[0] = 1
      for (let i = 0; i < members.length; i++) {
        const chance = (members[i] as Rating).finishes[index]?.[draw(i)] as number
        for (let n = i + 1; n > 0; n--)
          coming[n] = (coming[n] as number) * (1 - chance) + (coming[n - 1] as number) * chance
        coming[0] = (coming[0] as number) * (1 - chance)
      }
      for (let n = slots + 1; n <= members.length; n++) points += each * (n - slots) * (coming[n] as number)
    }
    return points
  }

  /**
   * Pieces that find no room go to the same robot's goals that are never full, in proportion to what it places there. Changes `placed` to what then lies on each goal.
   */
  private beyondRoom(members: readonly Rating[], draw: DrawOf): number {
    const { placed, room, worth, own } = this
    let lost = 0
    for (let g = 0; g < placed.length; g++) {
      const wanted = placed[g] as number
      const over = Number.isFinite(room[g] as number) ? excess(wanted, room[g] as number) : 0
      if (!(over > 1e-9)) continue
      placed[g] = wanted - over
      lost += over * (worth[g] as number)
      for (let i = 0; i < members.length; i++) {
        const rating = members[i] as Rating
        const d = draw(i)
        const spilled = (over / wanted) * (rating.pieces[g]?.[d] as number)
        const tried = spilled / Math.max(1e-3, rating.hits[g]?.[d] as number)
        let others = 0
        for (let o = 0; o < placed.length; o++) {
          const open = o !== g && !Number.isFinite(room[o] as number)
          own[o] = open ? (rating.pieces[o]?.[d] as number) / Math.max(1e-3, rating.hits[o]?.[d] as number) : 0
          others += own[o] as number
        }
        if (!(others > 1e-9)) continue
        for (let o = 0; o < placed.length; o++) {
          const more = ((tried * (own[o] as number)) / others) * (rating.hits[o]?.[d] as number)
          placed[o] = (placed[o] as number) + more
          lost -= more * (worth[o] as number)
        }
      }
    }
    return lost
  }

  /** What a score is regressed on: a constant, what is expected, and who holds. */
  row({ own, other, at }: { own: Traits; other: Traits; at: number }): number[] {
    return [1, own.expected[at] as number, this.holding(own, other, at)]
  }

  /** Points for holding that come to the first alliance, as if who has more pieces in the end had more all along. */
  holding(own: Traits, other: Traits, at: number): number {
    let sum = 0
    for (let h = 0; h < this.holds.length; h++) {
      const mine = own.held[h]?.[at] as number
      const theirs = other.held[h]?.[at] as number
      const spread = Math.sqrt(mine + theirs + 0.25)
      // The logistic curve is near enough to the normal one for a number that is only regressed on.
      sum += (this.holds[h]?.points as number) / (1 + Math.exp((-1.702 * (mine - theirs - 0.5)) / spread))
    }
    return sum
  }
}

/** Expected number of pieces beyond a capacity, for a Poisson number of them taken as normal. */
function excess(pieces: number, capacity: number): number {
  if (!(pieces > 0)) return 0
  const spread = Math.sqrt(pieces)
  const z = (pieces - capacity) / spread
  return spread * (z * normalCdf(z) + normalDensity(z))
}
