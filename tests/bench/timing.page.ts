import { sweep, timing } from '../../src/model/timing/index.ts'
import { examples, motorPivotInput } from '../model/timing/inputs.ts'

/** What a real browser is asked to compute; bundled into a page by timingPage.ts. */
export interface TimingPage {
  /** Milliseconds of the slowest calculator, and which it is. */
  each(turns: number): { calculator: string; milliseconds: number }
  /** Milliseconds of a sweep of 200 points of the slowest that can be searched. */
  sweep(): number
}

function took(work: () => unknown): number {
  const begin = performance.now()
  work()
  return performance.now() - begin
}

const page: TimingPage = {
  each: (turns) =>
    examples
      .map(([calculator, input]) => ({
        calculator,
        milliseconds:
          took(() => {
            for (let turn = 0; turn < turns; turn++) timing(calculator, input)
          }) / turns,
      }))
      .reduce((slowest, one) => (one.milliseconds > slowest.milliseconds ? one : slowest)),
  sweep: () =>
    took(() =>
      sweep({
        calculator: 'pivot',
        input: motorPivotInput,
        reductions: { low: 20, high: 400, count: 100 },
        motors: [1, 2],
      }),
    ),
}

Object.assign(globalThis, { timingPage: page })
