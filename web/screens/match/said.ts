import { winError } from '../../../src/model/match/precision.ts'
import type { Chance, MatchReport, Measured } from '../../../src/model/match/types.ts'
import type { ValueCell } from '../../charts/cell.ts'
import { words } from '../../words/catalogue.ts'
import { decimal } from '../../words/decimal.ts'
import { plain, points } from '../../words/format.ts'

/** An error in whole steps of the digits beside it: rounded up, so that none looks smaller than it is, and none like 0. */
const inSteps = (error: number, step: number): number => Math.max(1, Math.ceil(error / step - 1e-6)) * step

/** An error beside points or seconds, which are written to 0.1. */
export const errorOf = ({ standardError }: { standardError: number }): string => points(inSteps(standardError, 0.1))

/** An error beside a number that is written to 0.01. */
export const fineErrorOf = ({ standardError }: { standardError: number }): string =>
  decimal(inSteps(standardError, 0.01), 2)

const whole = (share: number): string => `${Math.round(share)}\u00a0%`

/** An error of a chance to 1 %, as chances are written. */
export const chanceError = ({ standardError }: Chance): string => whole(inSteps(standardError * 100, 1))

/** 'a chance ± its error', both to 1 %; a share of counted matches may be all or none of them. What never varied has no error. */
export const chanceSaid = ({ probability, standardError }: Chance): string =>
  standardError === 0
    ? whole(probability * 100)
    : `${whole(probability * 100)} ± ${chanceError({ probability, standardError })}`

/** What never varied has no error to show. */
const withError = (shown: string, of: { standardError: number }): string =>
  of.standardError === 0 ? shown : `${shown} ± ${errorOf(of)}`

export const pointsSaid = (measured: Measured): string => withError(points(measured.mean), measured)

export const secondsSaid = (value: { mean: number; standardError: number }): string =>
  `${withError(points(value.mean), value)}\u00a0s`

export const chanceValue = (chance: Chance): ValueCell => ({
  shown: chanceSaid(chance),
  value: chance.probability * 100,
  unit: '%',
})

export const pointsValue = (measured: Measured): ValueCell => ({ shown: pointsSaid(measured), value: measured.mean })

export const secondsValue = (measured: { mean: number; standardError: number }): ValueCell => ({
  shown: secondsSaid(measured),
  value: measured.mean,
  unit: 's',
})

/** Why no more matches were played, in a sentence, where a precision of the chance to win was asked for. */
export function precisionSaid(
  { replicates, win, tie }: Pick<MatchReport, 'replicates' | 'win' | 'tie'>,
  precision: number | null,
): string[] {
  if (precision === null) return []
  const error = winError({
    matches: replicates,
    wins: win.probability * replicates,
    ties: tie.probability * replicates,
  })
  const text = words().match.answer
  const percents = (share: number) => `${plain(share)}\u00a0%`
  const [known, asked] = [percents(inSteps(100 * error, 0.01)), percents(100 * precision)]
  // By less than the last bit of a share that was counted and divided.
  return [error <= precision + 1e-12 ? text.precise(known, asked) : text.notPrecise(known, asked)]
}
