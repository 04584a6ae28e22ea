import { refusal } from '../documents/sentences.ts'
import type { Bonus, Game, Metric, Option } from '../documents/types.ts'
import type { Setup } from './setup.ts'
import type { Simulator } from './simulator.ts'

/** A bonus made ready: how many are needed, and of what. */
interface ReadyBonus {
  readonly bonus: Bonus
  readonly atLeast: number
  readonly amount: (match: Simulator, alliance: number, reckoning: Reckoning) => number
}

/**
 * What a match comes to once it has been played: points, bonuses and ranking points of both alliances (0 ours, 1 theirs).
 * One object serves all matches; its numbers are overwritten by each.
 */
export class Reckoning {
  readonly score = new Float64Array(2)
  readonly autoPoints = new Float64Array(2)
  readonly finishPoints = new Float64Array(2)
  readonly rankingPoints = new Float64Array(2)
  /** Of bonus b and alliance a at 2 · b + a: 1 where it was earned. */
  readonly bonuses: Uint8Array
  /** By robot, whether it played. */
  private readonly came = new Uint8Array(6)
  private readonly setup: Setup
  private readonly sets: readonly { needs: readonly (readonly [place: number, count: number])[]; points: number }[]
  private readonly ready: readonly ReadyBonus[]
  private readonly adjust: readonly { points: number; rankingPoints: number }[]

  /**
   * @param level of the event, where a bonus asks for different amounts by level
   * @throws ModelError 'invalid' where a bonus says nothing about the level
   */
  constructor(setup: Setup, level: string | null) {
    const { game } = setup.ground
    this.setup = setup
    this.bonuses = new Uint8Array(2 * game.bonuses.length)
    this.sets = game.sets.map(({ needs, points }) => ({
      needs: Object.entries(needs).map(([goal, count]) => [setup.ground.placeOf.get(goal) as number, count] as const),
      points,
    }))
    this.ready = game.bonuses.map((bonus, b) => ({
      bonus,
      atLeast: needed(game, b, level),
      amount: amountOf(setup, bonus.metric),
    }))
    this.adjust = setup.players.map(({ option }) => adjustmentsOf(option))
  }

  of(match: Simulator): void {
    const { points, played, minorFouls, majorFouls, heldPoints, heldAutoPoints } = match
    const { ground } = this.setup
    this.score.fill(0)
    this.rankingPoints.fill(0)
    this.autoPoints.set(match.autoPoints)
    this.came.set(played)
    for (let i = 0; i < 6; i++) {
      const a = i < 3 ? 0 : 1
      if (played[i] !== 0) {
        const { points: own, rankingPoints } = this.adjust[i] as { points: number; rankingPoints: number }
        points[i] = (points[i] as number) + own
        this.rankingPoints[a] = (this.rankingPoints[a] as number) + rankingPoints
      }
      this.score[a] = (this.score[a] as number) + (points[i] as number)
      const { minor, major } = ground.game.fouls
      this.score[1 - a] =
        (this.score[1 - a] as number) + minor * (minorFouls[i] as number) + major * (majorFouls[i] as number)
    }
    for (let a = 0; a < 2; a++) {
      for (let h = 0; h < ground.holds.length; h++) {
        // What is a whole number but for rounding counts as that number.
        this.score[a] = (this.score[a] as number) + Math.floor((heldPoints[2 * h + a] as number) + 1e-9)
        this.autoPoints[a] = (this.autoPoints[a] as number) + (heldAutoPoints[2 * h + a] as number)
      }
      this.finishPoints[a] = this.finishPointsOf(match, a)
      this.score[a] = (this.score[a] as number) + this.setPoints(match, a)
    }
    this.payBonuses(match)
    this.payRanking()
  }

  /** Points that the match just reckoned with got at its end alone. */
  atEnd(a: number): { bonuses: number; adjusted: number } {
    let [bonuses, adjusted] = [0, 0]
    for (let b = 0; b < this.ready.length; b++)
      if (this.bonuses[2 * b + a]) bonuses += (this.ready[b] as ReadyBonus).bonus.points
    for (let i = 3 * a; i < 3 * a + 3; i++) if (this.came[i]) adjusted += this.adjust[i]?.points ?? 0
    return { bonuses, adjusted }
  }

  private finishPointsOf({ counts, ground }: Simulator, a: number): number {
    let points = 0
    for (let p = ground.sources + ground.goals; p < ground.count; p++)
      points += (counts[a * ground.count + p] as number) * (ground.finishPoints[p] as number)
    return points
  }

  private setPoints({ counts, ground }: Simulator, a: number): number {
    let sum = 0
    for (const { needs, points } of this.sets) {
      let times = Number.POSITIVE_INFINITY
      for (const [place, count] of needs)
        times = Math.min(times, Math.floor((counts[a * ground.count + place] as number) / count))
      if (Number.isFinite(times)) sum += times * points
    }
    return sum
  }

  private payBonuses(match: Simulator): void {
    for (let b = 0; b < this.ready.length; b++) {
      const { bonus, atLeast, amount } = this.ready[b] as ReadyBonus
      const ours = amount(match, 0, this)
      const theirs = amount(match, 1, this)
      for (let a = 0; a < 2; a++) {
        const own = bonus.scope === 'both' ? ours + theirs : a === 0 ? ours : theirs
        const earned = own >= atLeast - 1e-9
        this.bonuses[2 * b + a] = earned ? 1 : 0
        if (!earned) continue
        this.score[a] = (this.score[a] as number) + bonus.points
        this.rankingPoints[a] = (this.rankingPoints[a] as number) + bonus.rankingPoints
      }
    }
  }

  private payRanking(): void {
    const { win, tie, loss } = this.setup.ground.game.ranking
    const margin = (this.score[0] as number) - (this.score[1] as number)
    for (let a = 0; a < 2; a++) {
      const lead = a === 0 ? margin : -margin
      this.rankingPoints[a] = (this.rankingPoints[a] as number) + (lead > equal ? win : lead < -equal ? loss : tie)
    }
  }
}

/** Scores that differ by no more than this are the same but for rounding. */
export const equal = 1e-9

function adjustmentsOf({ adjust }: Option): { points: number; rankingPoints: number } {
  return {
    points: adjust.reduce((sum, { points }) => sum + points, 0),
    rankingPoints: adjust.reduce((sum, { rankingPoints }) => sum + rankingPoints, 0),
  }
}

function needed({ bonuses }: Game, b: number, level: string | null): number {
  const { atLeast, name } = bonuses[b] as Bonus
  if (typeof atLeast === 'number') return atLeast
  const own = level === null ? undefined : atLeast[level]
  if (own === undefined)
    throw refusal(
      'invalid',
      ['otherLevel', { bonus: name, level: level ?? '', known: Object.keys(atLeast) }],
      ['level'],
    )
  return own
}

function amountOf({ ground }: Setup, metric: Metric): ReadyBonus['amount'] {
  const placesOf = (ids: readonly string[]) => ids.map((id) => ground.placeOf.get(id) as number)
  const countOf = (places: readonly number[]) => (match: Simulator, a: number) => {
    let sum = 0
    for (const place of places) sum += match.counts[a * ground.count + place] as number
    return sum
  }
  switch (metric.kind) {
    case 'pieces':
      return countOf(placesOf(metric.goals))
    case 'finished':
      return countOf(placesOf(metric.finishes))
    case 'autoPoints':
      return (_, a, reckoning) => reckoning.autoPoints[a] as number
    case 'finishPoints':
      return (_, a, reckoning) => reckoning.finishPoints[a] as number
    case 'heldSeconds': {
      const h = ground.holds.indexOf(ground.placeOf.get(metric.goal) as number)
      return (match, a) => match.heldSeconds[2 * h + a] ?? 0
    }
  }
}
