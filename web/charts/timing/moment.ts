import { useCallback, useSyncExternalStore } from 'react'

/** A moment of a movement: seconds since its start, and what a curve over its times has then. */
export interface Moment {
  time: number
  of(curve: readonly number[]): number
}

/** The moment at a share of the movement's time; straight between the curve's points. */
export function momentAt(times: readonly number[], share: number): Moment {
  const last = times.length - 1
  const time = times[0]! + (times[last]! - times[0]!) * Math.min(1, Math.max(0, share))
  const found = times.findIndex((each) => each >= time)
  const next = found === -1 ? last : Math.max(1, found)
  const [a, b] = [times[next - 1] ?? time, times[next] ?? time]
  const part = b > a ? (time - a) / (b - a) : 0
  return { time, of: (curve) => curve[next - 1]! + (curve[next]! - curve[next - 1]!) * part }
}

// The drawing and the curves of one mechanism stand apart on the page and show one moment: it is kept by the mechanism's id.
const shares = new Map<string, number>()
const listeners = new Set<() => void>()

/** Half way at first: there the movement shows most of itself. */
const first = 0.5

/** The share of the movement's time that is shown, and how to choose another. */
export function useMoment(id: string): [share: number, choose: (share: number) => void] {
  const now = () => shares.get(id) ?? first
  const share = useSyncExternalStore(subscribe, now, () => first)
  const choose = useCallback(
    (next: number) => {
      shares.set(id, Math.min(1, Math.max(0, next)))
      for (const listener of listeners) listener()
    },
    [id],
  )
  return [share, choose]
}

function subscribe(listener: () => void): () => void {
  listeners.add(listener)
  return () => listeners.delete(listener)
}
