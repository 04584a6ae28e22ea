import type { GraphLeg, GraphNode } from './graph.ts'
import { finishValue, type Problem, type Rules } from './problem.ts'
import { stop } from './table.ts'

/** A later action replaces an earlier one, and any action stopping, only if better by more than this (points). */
export const tie = 1e-12

/** The best finish of a node within a block of times, which does not depend on the room. */
export class Finishes {
  /** By time within the block: what it is worth, and which action it is. */
  readonly worth: Float64Array
  private readonly choice: Int16Array
  private readonly q: Float64Array
  private readonly problem: Problem
  private readonly rules: Rules

  /** @param length times that a block may have */
  constructor(problem: Problem, rules: Rules, length: number) {
    this.problem = problem
    this.rules = rules
    this.worth = new Float64Array(length)
    this.choice = new Int16Array(length)
    this.q = new Float64Array(length)
  }

  find(node: GraphNode, from: number, count: number): void {
    const { worth, choice, q } = this
    worth.fill(0, 0, count)
    choice.fill(stop, 0, count)
    for (const [action, leg] of node.legs.entries()) {
      if (leg.to >= 0) continue
      const end = this.valuesOf(leg, from, count, q)
      for (let j = 0; j < end; j++)
        if ((q[j] as number) > (worth[j] as number) + tie) {
          worth[j] = q[j] as number
          choice[j] = action
        }
    }
  }

  /** Values of one finish leg into `out`; the number of times in which it may begin comes back. */
  valuesOf(leg: GraphLeg, from: number, count: number, out: Float64Array): number {
    const reached = this.problem.reached[leg.id] as Float64Array
    const value = finishValue(leg)
    const end = Math.max(0, Math.min(count, this.rules.finishFrom - from + 1))
    for (let j = 0; j < end; j++) out[j] = value * (reached[from + j] as number)
    return end
  }

  takeWhereBetter(best: Float64Array, choice: Int16Array, count: number): void {
    const { worth } = this
    for (let j = 0; j < count; j++)
      if ((worth[j] as number) > (best[j] as number) + tie) {
        best[j] = worth[j] as number
        choice[j] = this.choice[j] as number
      }
  }
}
