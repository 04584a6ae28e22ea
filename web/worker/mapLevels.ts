/** Lattice of a map at its finest: values along each side, and the coarsest step that it begins with. */
export const side = 33
export const steps = [8, 4, 2, 1] as const

/** Along the border alone: a whole lattice at the finest step would be four times the work for the same picture. */
const borderOnly = 1

/** Points of every option by place of the lattice. */
export type Known = Map<number, readonly number[]>

/** A map so far: points of every option in rows from the lowest y, each from the lowest x. */
export interface MapGrid {
  size: number
  rows: (readonly number[])[][]
}

export const keyOf = (i: number, j: number): number => j * side + i

const bestOf = (points: readonly number[]): number => points.indexOf(Math.max(...points))

const at = (known: Known, i: number, j: number): readonly number[] => known.get(keyOf(i, j))!

const lattice = (step: number): number[] => Array.from({ length: (side - 1) / step + 1 }, (_, k) => k * step)

/** Whether a square of the coarser lattice has two different best options at its corners. */
const onBorder = (known: Known, i: number, j: number, step: number): boolean => {
  const best = bestOf(at(known, i, j))
  return [
    [i + step, j],
    [i, j + step],
    [i + step, j + step],
  ].some(([a, b]) => bestOf(at(known, a!, b!)) !== best)
}

/** Places that the map needs at this step and does not know yet; the lattice of the step before is known. */
export function wanted(known: Known, step: (typeof steps)[number]): [number, number][] {
  const places = new Map<number, [number, number]>()
  const want = (i: number, j: number) => {
    if (!known.has(keyOf(i, j))) places.set(keyOf(i, j), [i, j])
  }
  if (step !== borderOnly) {
    for (const j of lattice(step)) for (const i of lattice(step)) want(i, j)
    return [...places.values()]
  }
  const coarser = step * 2
  for (const j of lattice(coarser).slice(0, -1))
    for (const i of lattice(coarser).slice(0, -1))
      if (onBorder(known, i, j, coarser))
        for (const b of [j, j + step, j + coarser]) for (const a of [i, i + step, i + coarser]) want(a, b)
  return [...places.values()]
}

/** The map at this step; what was not planned lies on the straight line between its neighbours on the coarser lattice. */
export function gridOf(known: Known, step: number): MapGrid {
  const coarser = step * 2
  const value = (i: number, j: number): readonly number[] => {
    const found = known.get(keyOf(i, j))
    if (found) return found
    const down = (k: number) => Math.floor(k / coarser) * coarser
    const up = (k: number) => Math.ceil(k / coarser) * coarser
    const corners = [
      at(known, down(i), down(j)),
      at(known, up(i), down(j)),
      at(known, down(i), up(j)),
      at(known, up(i), up(j)),
    ]
    return corners[0]!.map((_, option) => corners.reduce((sum, corner) => sum + corner[option]!, 0) / 4)
  }
  const places = lattice(step)
  return { size: places.length, rows: places.map((j) => places.map((i) => value(i, j))) }
}
