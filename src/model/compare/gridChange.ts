import { Matrix, solve } from 'ml-matrix'
import { bestOf } from './evaluator.ts'
import { type Draws, meansOf } from './information.ts'

/** Largest rms change of a difference between the two grids that a belief may carry (points). */
export const tolerated = 0.05

export interface GridChange {
  /** The draws' values, with what the finer grid changes added where that was needed. */
  values: Draws
  /** Rms difference, in the repeated draws, between the values used and those on 0.1 s, of (an option − the best). */
  gridError: number
}

/** Draws on the coarse grid, and some of them repeated on the fine one. */
export interface TwoGrids {
  inputs: readonly (readonly number[])[]
  coarse: Draws
  fine: readonly { draw: number; values: readonly number[] }[]
}

/**
 * What the coarse grid does to the difference between options, judged by the repeated draws. If it is more than
 * tolerated, the change of each option is described as linear in the inputs (least squares over the repeated draws) and
 * added to all draws; the error is then the rms of what that leaves, with the divisor n − parameters. If that is still
 * too much the caller repeats all draws on the fine grid.
 */
export function gridChange({ inputs, coarse, fine }: TwoGrids): GridChange {
  const reference = bestOf(meansOf(coarse))
  const changes = fine.map(({ draw, values }) =>
    values.map((value, option) => value - ((coarse[draw] as readonly number[])[option] as number)),
  )
  const gridError = spread(changes, reference, changes.length)
  if (gridError <= tolerated || changes.length === 0) return { values: coarse, gridError }

  const design = designOf(
    inputs,
    fine.map(({ draw }) => draw),
  )
  const known = new Matrix(fine.map(({ draw }) => design.row(draw)))
  const coefficients = solve(known, new Matrix(changes), true)
  const left = Matrix.sub(new Matrix(changes), known.mmul(coefficients)).to2DArray()
  const corrected = coarse.map((values, draw) => {
    const change = new Matrix([design.row(draw)]).mmul(coefficients).to1DArray()
    return values.map((value, option) => value + (change[option] as number))
  })
  return { values: corrected, gridError: spread(left, reference, changes.length - known.columns) }
}

/** Largest, over the options, root of the mean square of (change of the option − change of the reference). */
function spread(changes: readonly (readonly number[])[], reference: number, divisor: number): number {
  const squares = (changes[0] ?? []).map((_, option) =>
    changes.reduce((sum, change) => sum + ((change[option] as number) - (change[reference] as number)) ** 2, 0),
  )
  return Math.sqrt(Math.max(0, ...squares) / Math.max(1, divisor))
}

/** 1 and the inputs that vary in the repeated draws, scaled; only 1 where there are too many for the draws. */
function designOf(inputs: readonly (readonly number[])[], repeated: readonly number[]) {
  const columns = (inputs[0] ?? []).flatMap((_, index) => {
    const seen = repeated.map((draw) => inputs[draw]?.[index] as number)
    const low = Math.min(...seen)
    const width = Math.max(...seen) - low
    return width > 0 ? [{ index, low, width }] : []
  })
  const used = columns.length * 3 < repeated.length ? columns : []
  return {
    row: (draw: number) => [
      1,
      ...used.map(({ index, low, width }) => ((inputs[draw]?.[index] as number) - low) / width),
    ],
  }
}
