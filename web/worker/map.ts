import type { MapAxes, MapPoint } from '../../src/model/compare/index.ts'
import type { CompareRequest } from '../../src/model/compare/types.ts'
import { askModel } from './client.ts'
import { gridOf, type Known, keyOf, type MapGrid, side, steps, wanted } from './mapLevels.ts'

/** Places that a worker plans before it tells them: a stop waits for no longer than that, since it ends the worker. */
const together = 10

/** About how many places a map has in the end: 17 × 17, and those along a border. */
const expected = 289 + 90

/**
 * The map of best options over two inputs, planned by two workers at once and shown as it grows finer. Stopped by the
 * signal; `progress` from 0 to 1; `grown` is called with each whole map, coarsest first, and with the step of its lattice.
 */
export async function computeMap(
  request: CompareRequest,
  axes: MapAxes,
  watch: { signal: AbortSignal; progress(share: number): void; grown(grid: MapGrid, step: number): void },
): Promise<void> {
  const { signal } = watch
  const rangeOf = (id: string): Range => request.inputs?.find((input) => input.id === id) ?? { low: 0, high: 0 }
  const [x, y] = [rangeOf(axes.x), rangeOf(axes.y)]
  const place = ([i, j]: [number, number]): MapPoint => [along(x, i), along(y, j)]
  const known: Known = new Map()
  for (const step of steps) {
    const queue = wanted(known, step)
    const work = async () => {
      while (queue.length > 0) {
        const places = queue.splice(0, together)
        const points = await askModel('mapPart', { request, axes, at: places.map(place) }, { signal, asked: true })
        places.forEach(([i, j], index) => void known.set(keyOf(i, j), points[index]!))
        watch.progress(Math.min(1, known.size / expected))
      }
    }
    await Promise.all([work(), work()])
    watch.grown(gridOf(known, step), step)
  }
}

interface Range {
  low: number
  high: number
}

const along = ({ low, high }: Range, index: number): number =>
  index === side - 1 ? high : low + ((high - low) * index) / (side - 1)
