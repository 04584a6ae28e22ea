/** Plans cost far more than times: they are made at a few places of a row, and the rest lies on the lines between. */

/** Points by place in the row; null where the plan said that it can not be done. */
export type Planned = ReadonlyMap<number, number | null>

/** A place of a row. `off` is by about how much the line may miss (points); 0 where it was planned. */
export type Filled = { points: number; off: number } | null

/** Half of the last digit that points are shown with. */
export const mostOff = 0.05

/** Each stretch is halved so often whatever it looks like, so that a bend between its ends is not overlooked. */
const leastHalvings = 3

interface Stretch {
  from: number
  to: number
  depth: number
  /** By about how much the line from end to end may miss (points). */
  off: number
}

/**
 * Places of a row that should be planned next, coarsest first; none: the lines are close enough. A stretch between two
 * planned places is halved where its parent's middle lay so far off the line that half of it is more than `mostOff`.
 * For a smooth curve a quarter would do; halves leave room for a bend.
 *
 * @param possible which places of the row can be done at all, as the times say
 */
export function placesToPlan(possible: readonly boolean[], planned: Planned): number[] {
  const wanted = new Set<number>()
  for (const { from, to } of runsOf(possible, planned)) {
    const missing = [from, to].filter((place) => !planned.has(place))
    if (missing.length > 0) for (const place of missing) wanted.add(place)
    else for (const middle of leavesOf(from, to, planned).flatMap(wantedMiddle)) wanted.add(middle)
  }
  return [...wanted].sort((a, b) => a - b)
}

/** The whole row: planned places as they are, the others on the line between their neighbours. */
export function filled(possible: readonly boolean[], planned: Planned): Filled[] {
  const row: Filled[] = possible.map((_, place) => {
    const points = planned.get(place)
    return points === undefined || points === null ? null : { points, off: 0 }
  })
  for (const { from, to } of runsOf(possible, planned)) {
    if (!planned.has(from) || !planned.has(to)) continue
    for (const leaf of leavesOf(from, to, planned)) {
      for (let place = leaf.from + 1; place < leaf.to; place++) {
        row[place] = { points: onLine(leaf, place, planned), off: leaf.off }
      }
    }
  }
  return row
}

/** Unbroken runs of possible places: no line is drawn across what can not be done. */
function runsOf(possible: readonly boolean[], planned: Planned): { from: number; to: number }[] {
  const runs: { from: number; to: number }[] = []
  for (const [place, can] of possible.entries()) {
    if (!can || planned.get(place) === null) continue
    const last = runs.at(-1)
    if (last && last.to === place - 1) last.to = place
    else runs.push({ from: place, to: place })
  }
  return runs
}

/** Stretches between planned places that lie in the middle of each other. */
function leavesOf(from: number, to: number, planned: Planned): Stretch[] {
  const leaves: Stretch[] = []
  const walk = (stretch: Stretch) => {
    const middle = middleOf(stretch)
    const points = middle === null ? undefined : planned.get(middle)
    if (middle === null || points === undefined || points === null) return void leaves.push(stretch)
    const off = Math.abs(points - onLine(stretch, middle, planned)) / 2
    const depth = stretch.depth + 1
    walk({ from: stretch.from, to: middle, depth, off })
    walk({ from: middle, to: stretch.to, depth, off })
  }
  walk({ from, to, depth: 0, off: Number.POSITIVE_INFINITY })
  return leaves
}

const middleOf = ({ from, to }: Stretch): number | null => (to - from < 2 ? null : Math.floor((from + to) / 2))

function wantedMiddle(stretch: Stretch): number[] {
  const middle = middleOf(stretch)
  return middle === null || (stretch.depth >= leastHalvings && stretch.off <= mostOff) ? [] : [middle]
}

function onLine({ from, to }: Stretch, place: number, planned: Planned): number {
  const [a, b] = [planned.get(from)!, planned.get(to)!]
  return a + ((b - a) * (place - from)) / (to - from)
}
