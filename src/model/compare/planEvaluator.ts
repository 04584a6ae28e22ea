import type { Game } from '../documents/types.ts'
import { type LegNames, Planner } from '../plan/index.ts'
import { applyInput, type Documents } from './apply.ts'
import type { Step } from './beliefDraws.ts'
import { pointerTokens } from './pointer.ts'
import type { CompareRequest, Input } from './types.ts'

/** How an option is valued: the grid of time, and whether the robot's form varies or is 1. */
export interface Valuation {
  step: Step
  form: boolean
}

/**
 * Points of the fine grid of legs per step in the many plans of a belief: 1/12 s instead of 1/40 s is a tenth of the work
 * and changes differences by some thousandths of a point; the draws repeated on 0.1 s (legs on 0.01 s) would tell.
 */
const beliefPerStep = 3

/** Remembered values per option; a scan or a root meets the same ones again, a belief never does. */
const mostRemembered = 256

/** So many pilots in a row without another leg: hardly any draw brings one then. */
const mostInVain = 6

/**
 * Expected points of options with inputs at given values, by the plan. What an input does not touch stays the same
 * object from one evaluation to the next, so that the planners keep its routes, durations and legs; an option that no
 * changed input touches is not planned again.
 */
export class PlanEvaluator {
  readonly #inputs: readonly Input[]
  /** Documents after 0, 1, … inputs, and the values that they were made with. */
  readonly #chain: Documents[]
  readonly #applied: number[] = []
  /** Per option: places of the inputs that touch it. */
  readonly #touching: number[][]
  readonly #planners: Record<Step, WeakMap<Game, Planner[]>> = { 0.25: new WeakMap(), 0.1: new WeakMap() }
  readonly #remembered: Map<string, number>[]
  /** Per option: the legs that the plans of 0.25 s keep to; all where it is not set. */
  #used: LegNames[] = []

  constructor({ game, options, inputs = [] }: Pick<CompareRequest, 'game' | 'options' | 'inputs'>) {
    this.#inputs = inputs
    this.#chain = [{ game, options }]
    this.#touching = options.map((_, option) =>
      inputs.flatMap(({ paths }, index) => (paths.some((path) => touches(path, option)) ? [index] : [])),
    )
    this.#remembered = options.map(() => new Map())
  }

  values(values: readonly number[], how: Valuation): number[] {
    const { game, options } = this.#documents(values)
    return options.map((option, index) => {
      const remembered = this.#remembered[index]!
      const key = [how.step, how.form, ...this.#touching[index]!.map((input) => values[input])].join(' ')
      const known = remembered.get(key)
      if (known !== undefined) return known
      const only = how.step === 0.25 ? this.#used[index] : undefined
      const points = this.planner(game, how.step, index).value(option, { form: how.form, only })
      if (remembered.size >= mostRemembered) remembered.clear()
      remembered.set(key, points)
      return points
    })
  }

  /**
   * Lets the plans on 0.25 s keep to the legs that some plan at these values begins. Two thirds of an option's legs are
   * begun nowhere near the draws of a belief, and cost as much time as the others. What is lost (hundred-thousandths of a
   * point) would show in the draws repeated on 0.1 s, which have all legs. The likely values and each input's ends are all
   * looked at; of the further pilots as many as bring a leg now and then.
   */
  keepToUsed(pilots: readonly (readonly number[])[], tick: () => void): void {
    const used = this.#chain[0]!.options.map(() => new Set<string>())
    // An input's ends change nothing for an option that it does not touch.
    const looked = used.map(() => new Set<string>())
    const ends = 1 + 2 * this.#inputs.length
    let inVain = 0
    pilots.forEach((values, pilot) => {
      tick()
      if (pilot >= ends && inVain >= mostInVain) return
      const before = used.reduce((sum, { size }) => sum + size, 0)
      const { game, options } = this.#documents(values)
      options.forEach((option, index) => {
        const key = this.#touching[index]!.map((input) => values[input]).join(' ')
        if (looked[index]!.has(key)) return
        looked[index]!.add(key)
        for (const leg of this.planner(game, 0.25, index).usedLegs(option)) used[index]!.add(leg)
      })
      inVain = used.reduce((sum, { size }) => sum + size, 0) > before ? 0 : inVain + 1
    })
    this.#used = used
    for (const remembered of this.#remembered) remembered.clear()
  }

  /** One planner per option, since a planner keeps what its last plan used: options in turn would push each other out. */
  planner(game: Game, step: Step, option: number): Planner {
    const planners = this.#planners[step].get(game) ?? []
    this.#planners[step].set(game, planners)
    planners[option] ??= step === 0.25 ? new Planner(game, step, beliefPerStep) : new Planner(game, step)
    return planners[option]
  }

  /** Inputs are applied in their order, and only from the first one that has another value than last time. */
  #documents(values: readonly number[]): Documents {
    this.#inputs.forEach((input, index) => {
      const value = values[index]!
      if (this.#applied[index] === value && this.#chain.length > index + 1) return
      this.#chain.length = index + 1
      this.#chain.push(applyInput(this.#chain[index]!, input, value))
      this.#applied[index] = value
    })
    return this.#chain[this.#inputs.length]!
  }
}

function touches(path: string, option: number): boolean {
  const [root, place] = pointerTokens(path)
  return root === 'game' || place === String(option)
}
