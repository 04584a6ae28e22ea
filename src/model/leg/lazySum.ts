import { coarseSum } from './coarseSum.ts'
import { capped, convolve, type Pmf, regrid } from './pmf.ts'

/** When a leg or one of its pieces is over. */
export interface LegTime {
  /** The distribution on the grid of the stages. */
  readonly fine: Pmf
  /** The distribution of `form` times this time on a grid `ratio` times as coarse; asked for with one ratio only. */
  onGrid(ratio: number, form: number): Pmf
}

/**
 * When a leg or one of its pieces is over: a time, or the sum of two independent ones. A plan asks for it on its own grid,
 * ten times as coarse as that of the stages, where the sum costs a tenth; only who asks for the fine one has it made.
 */
export class LazySum implements LegTime {
  private readonly one: Pmf
  private readonly other: Pmf | null
  /** Grid points beyond which times are gathered on the last. */
  private readonly limit: number
  private made: Pmf | null
  private readonly byForm = new Map<number, Pmf>()

  constructor(one: Pmf, other: Pmf | null, limit = Number.POSITIVE_INFINITY) {
    this.one = one
    this.other = other
    this.limit = limit
    this.made = other === null ? one : null
  }

  get fine(): Pmf {
    this.made ??= capped(convolve(this.one, this.other as Pmf), this.limit)
    return this.made
  }

  onGrid(ratio: number, form: number): Pmf {
    let found = this.byForm.get(form)
    if (!found) {
      found =
        form === 1 && this.made === null
          ? capped(coarseSum(this.one, this.other as Pmf, ratio), this.limit / ratio)
          : regrid(this.fine, ratio, form)
      this.byForm.set(form, found)
    }
    return found
  }
}
