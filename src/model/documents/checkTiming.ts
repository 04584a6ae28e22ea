import type { Problem } from '../errors.ts'
import { idsOf, unique } from './checkIds.ts'
import type { TimingRecord } from './timing.ts'

/** Each measured time is kept once. What was timed may since be gone from the design: the record stays what it is. */
export const checkTiming = ({ trials }: TimingRecord): Problem[] => unique(idsOf(trials, ['trials']), 'measured times')
