/** A page that sleeps with its phone does not count; longer than a match it does not matter (ms). */
const longestSleep = 20 * 60_000

/** What a phone's clock and its running time say at the same moment (ms). */
export interface Moment {
  wall: number
  running: number
}

/**
 * The time since 1970 (ms) by which a match is timed: the phone's clock as it was when the page was opened, and what has passed
 * since. A phone that corrects its clock in the middle of a match, by the network or by hand, moves no tap, however far.
 *
 * Some phones' running time stands still while they sleep. They sleep with their screen off, so only where the page was out of
 * sight meanwhile is a clock that is ahead by some minutes believed.
 */
export class Steady {
  readonly #opened: Moment
  #slept = 0
  /** How far the clock was ahead when the page went out of sight. */
  #ahead: number | null = null

  constructor(opened: Moment) {
    this.#opened = opened
  }

  at({ running }: Moment): number {
    return this.#opened.wall + (running - this.#opened.running) + this.#slept
  }

  outOfSight(moment: Moment): void {
    this.#ahead ??= moment.wall - this.at(moment)
  }

  inSight(moment: Moment): void {
    if (this.#ahead === null) return
    const slept = moment.wall - this.at(moment) - this.#ahead
    if (slept > 0 && slept < longestSleep) this.#slept += slept
    this.#ahead = null
  }
}

const moment = (): Moment => ({ wall: Date.now(), running: performance.now() })

const steady = new Steady(moment())

function look(): void {
  if (document.visibilityState === 'hidden') steady.outOfSight(moment())
  else steady.inSight(moment())
}

// Where this is tested there is no page.
if (typeof document !== 'undefined') {
  document.addEventListener('visibilitychange', look)
  look()
}

export const steadyNow = (): number => steady.at(moment())
