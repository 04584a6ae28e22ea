import type { BeliefPart } from './beliefDraws.ts'
import type { Question } from './evaluator.ts'
import { gridChange, tolerated } from './gridChange.ts'
import { hypercubes } from './hypercubes.ts'
import { chanceOfBest, expectedRegret, perfectInformation } from './information.ts'
import { learning } from './learning.ts'
import type { BeliefReport } from './types.ts'

/** Whether the draws must be repeated on 0.1 s: the coarse grid changes the difference by more than is tolerated. */
export function needsFineGrid(all: BeliefPart): boolean {
  return all.step !== 0.1 && onGrid(all).gridError > tolerated
}

/**
 * What all draws of a belief say: chance that each option is best, expected regret, EVPI, and for every input EVPPI and
 * EVSI. `gridError` is the rms that the difference between options still is away from the plans on 0.1 s.
 */
export function summaryOf(
  { options, inputs }: Pick<Question, 'options' | 'inputs'>,
  all: BeliefPart,
): Omit<BeliefReport, 'form'> {
  const { values, gridError } = onGrid(all)
  const byOption = (numbers: readonly number[]) =>
    Object.fromEntries(options.map((id, i) => [id, numbers[i] as number]))
  const learnt = learning(inputs, all.inputs, values)
  const byInput = <T>(of: (index: number) => T | null) =>
    Object.fromEntries(
      inputs.flatMap(({ id }, index) => {
        const found = of(index)
        return found === null ? [] : [[id, found] as const]
      }),
    )
  return {
    best: byOption(chanceOfBest(values)),
    regret: byOption(expectedRegret(values)),
    evpi: perfectInformation(values, hypercubes),
    evppi: byInput((index) => learnt[index]?.evppi ?? null),
    evsi: byInput((index) => learnt[index]?.evsi ?? null),
    gridError,
  }
}

const onGrid = (all: BeliefPart) =>
  all.step === 0.1
    ? { values: all.points, gridError: 0 }
    : gridChange({ inputs: all.inputs, coarse: all.points, fine: all.repeated })
