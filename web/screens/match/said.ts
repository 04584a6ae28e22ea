import type { Chance, Measured } from '../../../src/model/match/types.ts'
import type { ValueCell } from '../../charts/cell.ts'
import { plain, points } from '../../words/format.ts'

/** An error of chances to 0.1 %, so that no small one is shown as 0: '± 0.4 %'. */
export const chanceError = ({ standardError }: Chance): string => `${points(Math.max(0.1, standardError * 100))}\u00a0%`

/** A standard error to 0.1, or to 0.01 where it is smaller: '0.03'. Never shown as 0. */
export const errorOf = ({ standardError }: { standardError: number }): string =>
  standardError >= 0.095 ? points(standardError) : plain(Math.max(0.01, standardError))

const whole = (probability: number): string => `${Math.round(probability * 100)}\u00a0%`

/** 'a chance ± its error'; a share of counted matches may be all or none of them. */
export const chanceSaid = (chance: Chance): string => `${whole(chance.probability)} ± ${chanceError(chance)}`

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
