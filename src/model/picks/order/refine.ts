import { outcome } from '../../match/scores/spread.ts'
import type { Playing } from '../scores/index.ts'
import { believedOf, largerIn } from './believed.ts'
import type { Course } from './course.ts'
import type { WorkedOrder } from './pickOrder.ts'
import type { Strengths } from './strength.ts'
import type { PickOrder } from './types.ts'

/** So many of the first are simulated, and so many matches of each make a round. */
export const refinedChoices = 24
export const roundMatches = 252
/** Rounds after which a chance is known to about half a percentage point. */
export const enoughRounds = 24

/** An alliance to be simulated against those that it may meet, as many matches each. */
export interface RefineTask {
  /** Place among the choices; −1: with the replacement. */
  choice: number
  ours: readonly string[]
  others: readonly (readonly string[])[]
}

/** What there is to simulate, so that threads can share it. Alliances of more than three play with their best three. */
export function refineTasks({ base, courses }: WorkedOrder, strengths: Strengths): RefineTask[] {
  const trio = (members: readonly string[]) => strengths.of(members).teams
  const task = ({ ours, others }: Course, choice: number): RefineTask => ({
    choice,
    ours: trio(ours),
    others: others.map(trio).filter((each) => each.length === 3),
  })
  const first = courses.slice(0, refinedChoices).map(task)
  return (base ? [task(base, -1), ...first] : first).filter(
    ({ ours, others }) => ours.length === 3 && others.length > 0,
  )
}

/** Outcomes by match: 2 won, 1 tied, 0 lost. Match k of all tasks and rounds of one seed meets the same luck and the same draws of teams. */
export function playRound(
  playing: Playing,
  task: RefineTask,
  { round, seed }: { round: number; seed: number },
): Uint8Array {
  const { ours, others } = task
  const outcomes = new Uint8Array(roundMatches)
  // Opponents share a round evenly; those left over come at its end, the first ones first.
  const shares = others.map((_, k) => Math.floor((roundMatches + others.length - 1 - k) / others.length))
  let at = 0
  for (const [k, theirs] of others.entries()) {
    const from = round * roundMatches + at
    const { scores } = playing.play({ ours, theirs, seed, from, to: from + (shares[k] as number) })
    for (let m = 0; m < scores.length / 2; m++)
      outcomes[at + m] = 1 + outcome((scores[2 * m] as number) - (scores[2 * m + 1] as number))
    at += shares[k] as number
  }
  return outcomes
}

/** An order whose first choices are refined by simulated matches, as far as they go: it can be told at any time. */
export class Refinement {
  private readonly worked: WorkedOrder
  private readonly outcomes = new Map<number, Map<number, Uint8Array>>()

  constructor(worked: WorkedOrder) {
    this.worked = worked
  }

  /** @param choice place among the choices, −1 for the replacement */
  add(choice: number, of: { round: number; outcomes: Uint8Array }): void {
    const rounds = this.outcomes.get(choice) ?? new Map<number, Uint8Array>()
    this.outcomes.set(choice, rounds.set(of.round, of.outcomes))
  }

  /**
   * The order as it is now. A refined choice's mean is that of its simulated matches, paired with the replacement's; what is not
   * known of teams stays what the sibling says of it, moved there. Choices that are not simulated follow by the sibling.
   */
  order(): PickOrder {
    const { order, gains, base } = this.worked
    const rows = order.choices.map((choice, k) => {
      const paired = this.paired(k, choice.team === order.replacement ? k : -1)
      const own = gains[k] as Float64Array
      if (!paired || (base === null && choice.team !== order.replacement)) return { choice, gains: own }
      const shift = paired.gain - own.reduce((sum, gain) => sum + gain, 0) / own.length
      const moved = own.map((gain) => gain + shift)
      const { win } = choice
      const by = paired.win - win.mean
      return {
        gains: moved,
        choice: {
          ...choice,
          gain: believedOf(moved),
          win: { mean: paired.win, low: clamped(win.low + by), high: clamped(win.high + by) },
          error: paired.error,
          simulated: paired.matches,
        },
      }
    })
    const refined = rows.filter(({ choice }) => choice.simulated > 0)
    const others = rows.filter(({ choice }) => choice.simulated === 0)
    refined.sort((a, b) => b.choice.gain.mean - a.choice.gain.mean)
    const sorted = [...refined, ...others]
    return {
      ...order,
      choices: sorted.map(({ choice, gains: own }, k) => {
        const next = sorted[k + 1]
        return { ...choice, better: next ? largerIn(own, next.gains) : null }
      }),
    }
  }

  /** Rounds that a choice and the replacement both have. */
  private paired(choice: number, base: number) {
    const [own, other] = [this.outcomes.get(choice), this.outcomes.get(base)]
    if (!own || !other) return null
    const sum = { matches: 0, won: 0, gain: 0, squares: 0 }
    for (const [round, outcomes] of own) {
      const against = other.get(round)
      if (!against) continue
      for (let k = 0; k < outcomes.length; k++) {
        const gain = ((outcomes[k] as number) - (against[k] as number)) / 2
        sum.matches++
        sum.won += (outcomes[k] as number) / 2
        sum.gain += gain
        sum.squares += gain * gain
      }
    }
    const { matches } = sum
    if (matches === 0) return null
    const gain = sum.gain / matches
    // The replacement's own gain is 0 whatever the luck. Others: one more match each way, so that no error is 0 by chance.
    const variance = choice === base ? 0 : (sum.squares + 1) / (matches + 1) - gain * gain
    return { matches, win: sum.won / matches, gain, error: Math.sqrt(Math.max(0, variance) / matches) }
  }
}

const clamped = (chance: number): number => Math.min(1, Math.max(0, chance))
