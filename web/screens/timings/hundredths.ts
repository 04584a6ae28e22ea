import { plain } from '../../words/format.ts'

/** Seconds to a hundredth: hardware tells tenths apart. */
export const hundredths = (seconds: number): string => `${plain(seconds, 2)}\u00a0s`
