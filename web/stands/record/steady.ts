/** A page that sleeps with its phone does not count; longer than a match it does not matter (ms). */
const longestSleep = 20 * 60_000

/** What a phone's clock and its running time say at the same moment (ms). */
export interface Moment {
  wall: number
  running: number
}

const moment = (): Moment => ({ wall: Date.now(), running: performance.now() })

/**
 * The time since 1970 (ms) by which a match is timed: the phone's clock as it was when the page was opened, and what has passed
 * since. A phone that corrects its clock in the middle of a match, by the network or by hand, moves no tap. Where the page
 * stood still because the phone slept, its clock is ahead by some minutes and is believed.
 */
export function steadyFrom(opened: Moment, { wall, running }: Moment): number {
  const steady = opened.wall + (running - opened.running)
  const ahead = wall - steady
  return ahead > 0 && ahead < longestSleep ? wall : steady
}

const opened = moment()

export const steadyNow = (): number => steadyFrom(opened, moment())
