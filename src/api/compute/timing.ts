import { checkGame, checkOption, within } from '../../model/documents/index.ts'
import type { Answers, CalculatorName, Inputs } from '../../model/timing/index.ts'
import { airPlanAnswer, airPlanRequest, sweepAnswer, sweepRequest } from '../contracts/index.ts'
import * as contracts from '../contracts/timings/index.ts'
import { refuse } from '../errors.ts'
import { type Context, procedure, router } from '../trpc.ts'
import { computeEndpoint } from './endpoint.ts'
import type { TimingRequest } from './tasks.ts'

/** One calculator in a thread: a motion that changes quickly may take longer than the server should stand still. */
async function calculate<Name extends CalculatorName>(
  calculator: Name,
  { input, ctx }: { input: Inputs[Name]; ctx: Context },
): Promise<Answers[Name]> {
  const request = { calculator, input } as unknown as TimingRequest
  return (await ctx.pool.run('timing', request, ctx.signal)) as Answers[Name]
}

const described = (name: string, summary: string, answer: Parameters<typeof computeEndpoint>[2]) =>
  procedure.meta(computeEndpoint(`timing/${name}`, summary, answer)).output(answer)

/** Timings from hardware: the bodies are the calculators' inputs, with parts as they stand on the shelf. */
export const timing = router({
  drive: described('drive', 'Seconds of a drive over a distance', contracts.driveAnswer)
    .input(contracts.driveRequest)
    .mutation((asked) => calculate('drive', asked)),
  rollers: described('rollers', 'Seconds in which rollers draw a piece in', contracts.rollersAnswer)
    .input(contracts.rollersRequest)
    .mutation((asked) => calculate('rollers', asked)),
  pivot: described('pivot', 'Seconds of an arm through an angle', contracts.pivotAnswer)
    .input(contracts.pivotRequest)
    .mutation((asked) => calculate('pivot', asked)),
  wheel: described('wheel', 'Seconds to spin a wheel up, or to recover from a shot', contracts.wheelAnswer)
    .input(contracts.wheelRequest)
    .mutation((asked) => calculate('wheel', asked)),
  shot: described('shot', 'Exit speed, flight and margin of a shot', contracts.shotAnswer)
    .input(contracts.shotRequest)
    .mutation((asked) => calculate('shot', asked)),
  cylinder: described('cylinder', 'Seconds and air of a stroke', contracts.cylinderAnswer)
    .input(contracts.cylinderRequest)
    .mutation((asked) => calculate('cylinder', asked)),
  air: described('air', 'Pressure of stored air through a match', contracts.airAnswer)
    .input(contracts.airRequest)
    .mutation((asked) => calculate('air', asked)),
  airPlan: described(
    'air-plan',
    'Stored air through the trips of a plan: when it is lost, and what one tank more is worth',
    airPlanAnswer,
  )
    .input(airPlanRequest)
    .mutation(({ input, ctx }) => {
      const { game, option } = input
      refuse([...within(['game'], checkGame(game)), ...within(['option'], checkOption(game, option))])
      return ctx.pool.run('airPlan', { game, option }, ctx.signal)
    }),
  sweep: described(
    'sweep',
    'Times over reductions and numbers of motors, the best, and on request points of a match',
    sweepAnswer,
  )
    .input(sweepRequest)
    .mutation(({ input, ctx }) => {
      if (input.match) {
        const { game, option } = input.match
        refuse([
          ...within(['match', 'game'], checkGame(game)),
          ...within(['match', 'option'], checkOption(game, option)),
        ])
      }
      return ctx.pool.run('sweep', input, ctx.signal)
    }),
})
