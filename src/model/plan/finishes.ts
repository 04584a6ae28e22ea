import type { Workspace } from '../kernel/index.ts'
import { finishValue, type Problem, type Rules, reachedIn } from './problem.ts'
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
  /** Places by time within the block: what it is worth, and which action it is. */
  readonly worth: number
  readonly choice: number
  private readonly space: Workspace
  /** Per node. */
  readonly of: readonly Finish[][]
  private readonly rules: Rules

  /** @param length times that a block may have; takes places of the workspace */
  constructor(problem: Problem, rules: Rules, length: number, space: Workspace) {
    this.of = problem.graph.nodes.map((node) =>
      node.legs.flatMap((leg, action) =>
        leg.to < 0 ? [{ action, value: finishValue(leg), reached: reachedIn(problem, leg.id) }] : [],
      ),
    )
    this.rules = rules
    this.space = space
    this.worth = space.take(length)
    this.choice = space.take(length)
  }

  find(n: number, from: number, count: number): void {
    const { worth, choice, space } = this
    const { data } = space
    space.kernel.none(worth, choice, count, stop)
    const end = this.begunWithin(from, count)
    const finishes = this.of[n] as Finish[]
    for (let i = 0; i < finishes.length; i++) {
      const { action, value, reached } = finishes[i] as Finish
      for (let j = 0; j < end; j++) {
        const q = value * (reached[from + j] as number)
        if (q > (data[worth + j] as number) + tie) {
          data[worth + j] = q
          data[choice + j] = action
        }
      }
    }
  }

  /** Of `count` times left from `from` on, those with which a finish may begin. */
  private begunWithin(from: number, count: number): number {
    return Math.max(0, Math.min(count, this.rules.finishFrom - from + 1))
  }
}
