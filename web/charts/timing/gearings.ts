interface Place {
  reduction: number
  within: boolean
}

/** Round numbers for a logarithmic axis, about as many as asked for. */
export function logTicks(low: number, high: number, count: number): number[] {
  const sets = [[1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8], [1, 1.5, 2, 3, 5, 7], [1, 2, 5], [1, 3], [1]]
  const inside = (set: readonly number[]) => {
    const found: number[] = []
    for (let power = Math.floor(Math.log10(low)); power <= Math.ceil(Math.log10(high)); power++) {
      for (const digit of set) {
        const tick = Number((digit * 10 ** power).toPrecision(6))
        if (tick >= low * (1 - 1e-9) && tick <= high * (1 + 1e-9)) found.push(tick)
      }
    }
    return found
  }
  return sets.map(inside).find((ticks) => ticks.length <= count) ?? []
}

/** Stretches in which a row is outside the limits or impossible, each up to the middle (in ratio) of the next place. */
export function outsideOf(row: readonly Place[]): [low: number, high: number][] {
  const stretches: [number, number][] = []
  const edge = (a: Place | undefined, b: Place | undefined) =>
    a && b ? Math.sqrt(a.reduction * b.reduction) : (a ?? b)!.reduction
  for (const [place, each] of row.entries()) {
    if (each.within) continue
    const [from, to] = [edge(row[place - 1], each), edge(each, row[place + 1])]
    const last = stretches.at(-1)
    if (last && last[1] === from) last[1] = to
    else stretches.push([from, to])
  }
  return stretches
}

/** Unbroken runs of a value over the reductions. */
export function runsOfValues<Kind extends string>(
  row: readonly (Place & { [kind in Kind]: number | null })[],
  kind: Kind,
): [reduction: number, value: number][][] {
  const runs: [number, number][][] = []
  let open = false
  for (const each of row) {
    const value = each[kind] as number | null
    if (value !== null) {
      if (!open) runs.push([])
      runs.at(-1)!.push([each.reduction, value])
    }
    open = value !== null
  }
  return runs
}

/** Times run away where a mechanism hardly can: what is more than three times the least is not worth the room. */
const mostTimes = 3

/** What a picture's height spans. */
export function upTo(values: readonly number[], kind: 'seconds' | 'current' | 'points'): [number, number] {
  if (values.length === 0) return [0, 1]
  const [least, most] = [Math.min(...values), Math.max(...values)]
  if (kind === 'seconds') return [0, Math.min(most, mostTimes * least) * 1.05]
  if (kind === 'current') return [0, Math.max(most * 1.08, 1)]
  const margin = Math.max(0.5, (most - least) * 0.12)
  return [least - margin, most + margin]
}
