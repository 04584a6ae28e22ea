/** How long people watch before they have a break. */
export interface Breaks {
  /** Most matches that somebody watches without a break. */
  longest: number
  /** Matches in a row without watching that make a break. A pause in the schedule makes one too. */
  rest: number
}

/**
 * The matches (by place) in which somebody who watches these is beyond `longest` since the last break. `pauses[i]`: before match
 * i there is a pause in which everybody rests.
 */
export function overlong(watched: readonly boolean[], pauses: readonly boolean[], { longest, rest }: Breaks): number[] {
  const stint = new Stint({ longest, rest })
  return watched.flatMap((watches, index) => {
    if (pauses[index]) stint.pause()
    const tired = watches && stint.tired
    stint.step(watches)
    return tired ? [index] : []
  })
}

/** What somebody has watched since the last break. */
export class Stint {
  private watched = 0
  private off = 0
  private readonly breaks: Breaks

  constructor(breaks: Breaks) {
    this.breaks = breaks
  }

  /** One match more would be too many. */
  get tired(): boolean {
    return this.watched >= this.breaks.longest
  }

  /** In the midst of a stint, so that going on is no new beginning. */
  get going(): boolean {
    return this.watched > 0 && this.off === 0
  }

  get length(): number {
    return this.watched
  }

  pause(): void {
    this.watched = 0
    this.off = 0
  }

  step(watches: boolean): void {
    if (watches) {
      this.watched += 1
      this.off = 0
      return
    }
    this.off += 1
    if (this.off >= this.breaks.rest) this.watched = 0
  }
}
