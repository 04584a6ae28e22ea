import { plain } from '../../../words/format.ts'

/** A reduction to three digits: more nobody builds. */
export const reductionSaid = (reduction: number): string => plain(Number(reduction.toPrecision(3)), 3)

/** What is taken over: as many digits as are shown. */
export const reductionTaken = (reduction: number): number => Number(reduction.toPrecision(3))

export const amperes = (value: number): string => `${plain(value, 0)}\u00a0A`
export const volts = (value: number): string => `${plain(value, 1)}\u00a0V`
