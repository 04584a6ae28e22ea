import type { Ground } from './ground.ts'

/**
 * Who holds the goals that pay by the second: seconds and points of each alliance so far, and what one more piece would have
 * been worth. Numbers of hold goal h and alliance a (0 ours, 1 theirs) are at 2 · h + a.
 */
export class Holding {
  readonly count: number
  readonly pieces: Int32Array
  /** Seconds held and points earned, pause excluded; points until the end of autonomous. */
  readonly seconds: Float64Array
  readonly points: Float64Array
  readonly autoPoints: Float64Array
  /** Σ over placed pieces of the seconds before their placing in which the own lead was 0 or −1. */
  private readonly before: Float64Array
  /** Seconds so far in which the own lead was 0 or −1. */
  private readonly near: Float64Array
  private readonly since: Float64Array
  private readonly ground: Ground

  constructor(ground: Ground) {
    this.ground = ground
    this.count = ground.holds.length
    const numbers = () => new Float64Array(2 * this.count)
    this.pieces = new Int32Array(2 * this.count)
    this.seconds = numbers()
    this.points = numbers()
    this.autoPoints = numbers()
    this.before = numbers()
    this.near = numbers()
    this.since = new Float64Array(this.count)
  }

  begin(): void {
    this.pieces.fill(0)
    for (const numbers of [this.seconds, this.points, this.autoPoints, this.before, this.near]) numbers.fill(0)
    this.since.fill(0)
  }

  /** One piece more at an elapsed time (s). */
  place(h: number, alliance: number, now: number): void {
    this.settle(h, now)
    const at = 2 * h + alliance
    this.pieces[at] = (this.pieces[at] as number) + 1
    this.before[at] = (this.before[at] as number) + (this.near[at] as number)
  }

  endAuto(): void {
    for (let h = 0; h < this.count; h++) this.settle(h, this.ground.clock.auto)
    this.autoPoints.set(this.points)
    this.since.fill(this.ground.clock.teleop)
  }

  end(): void {
    for (let h = 0; h < this.count; h++) this.settle(h, this.ground.clock.end)
  }

  /** Seconds after their placing in which one of an alliance's pieces more made the difference, summed over its pieces. */
  marginal(h: number, alliance: number): number {
    const at = 2 * h + alliance
    return (this.pieces[at] as number) * (this.near[at] as number) - (this.before[at] as number)
  }

  private settle(h: number, now: number): void {
    const { ground, pieces, seconds, points, near } = this
    const elapsed = now - (this.since[h] as number)
    this.since[h] = now
    const place = ground.holds[h] as number
    const ours = 2 * h
    const lead = (pieces[ours] as number) - (pieces[ours + 1] as number)
    if (lead !== 0) {
      const at = lead > 0 ? ours : ours + 1
      const rate = now > ground.clock.auto ? ground.teleopPerSecond : ground.autoPerSecond
      seconds[at] = (seconds[at] as number) + elapsed
      points[at] = (points[at] as number) + elapsed * (rate[place] as number)
    }
    if (lead === 0 || lead === -1) near[ours] = (near[ours] as number) + elapsed
    if (lead === 0 || lead === 1) near[ours + 1] = (near[ours + 1] as number) + elapsed
  }
}
