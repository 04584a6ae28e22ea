import type { Chance, Measured } from '../../../src/model/match/types.ts'
import type { ValueCell } from '../../charts/cell.ts'
import { plain, points, seconds } from '../../words/format.ts'

/** An error of chances to 0.1 %, so that no small one is shown as 0: '± 0.4 %'. */
export const chanceError = ({ standardError }: Chance): string =>
  `${plain(Math.max(0.1, Math.round(standardError * 1000) / 10), 1)}\u00a0%`

/** A standard error to 0.1, or to two digits where it is smaller: '0.03'. */
export const errorOf = ({ standardError }: { standardError: number }): string =>
  standardError >= 0.1 || standardError === 0 ? plain(standardError, 1) : plain(standardError, 2)

const whole = (probability: number): string => `${Math.round(probability * 100)}\u00a0%`

/** 'a chance ± its error'; a share of counted matches may be all or none of them. */
export const chanceSaid = (chance: Chance): string => `${whole(chance.probability)} ± ${chanceError(chance)}`

export const pointsSaid = (measured: Measured): string => `${points(measured.mean)} ± ${errorOf(measured)}`

export const secondsSaid = (value: { mean: number; standardError: number }): string =>
  `${seconds(value.mean).replace('\u00a0s', '')} ± ${errorOf(value)}\u00a0s`

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
