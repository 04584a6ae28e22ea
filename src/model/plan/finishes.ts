import { finishValue, type Problem, type Rules } from './problem.ts'
import { stop } from './table.ts'

/** A later action replaces an earlier one, and any action stopping, only if better by more than this (points). */
export const tie = 1e-12

/** A finish leg of a node: its action, what it is worth once reached, and the chance of that by time left. */
export interface Finish {
  readonly action: number
  readonly value: number
  readonly reached: Float64Array
}

/** The best finish of a node within a block of times, which does not depend on the room. */
export class Finishes {
  /** By time within the block: what it is worth, and which action it is. */
  readonly worth: Float64Array
  private readonly choice: Int16Array
  /** Per node. */
  readonly of: readonly Finish[][]
  private readonly rules: Rules

  /** @param length times that a block may have */
  constructor(problem: Problem, rules: Rules, length: number) {
    this.of = problem.graph.nodes.map((node) =>
      node.legs.flatMap((leg, action) =>
        leg.to < 0 ? [{ action, value: finishValue(leg), reached: problem.reached[leg.id] as Float64Array }] : [],
      ),
    )
    this.rules = rules
    this.worth = new Float64Array(length)
    this.choice = new Int16Array(length)
  }

  find(n: number, from: number, count: number): void {
    const { worth, choice } = this
    for (let j = 0; j < count; j++) {
      worth[j] = 0
      choice[j] = stop
    }
    const end = this.begunWithin(from, count)
    const finishes = this.of[n] as Finish[]
    for (let i = 0; i < finishes.length; i++) {
      const { action, value, reached } = finishes[i] as Finish
      for (let j = 0; j < end; j++) {
        const q = value * (reached[from + j] as number)
        if (q > (worth[j] as number) + tie) {
          worth[j] = q
          choice[j] = action
        }
      }
    }
  }

  /** Of `count` times left from `from` on, those with which a finish may begin. */
  private begunWithin(from: number, count: number): number {
    return Math.max(0, Math.min(count, this.rules.finishFrom - from + 1))
  }

  /** Puts a finish in place of the best action of each time, from the places `best` and `choice` on, where it is better. */
  takeWhereBetter(data: Float64Array, best: number, choice: number, count: number): void {
    const { worth } = this
    for (let j = 0; j < count; j++)
      if ((worth[j] as number) > (data[best + j] as number) + tie) {
        data[best + j] = worth[j] as number
        data[choice + j] = this.choice[j] as number
      }
  }
}
