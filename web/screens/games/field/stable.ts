import { useCallback, useLayoutEffect, useRef } from 'react'
import { same } from '../../../data/difference.ts'

/** A function that stays the same one and does what the newest does: so that a panel is not drawn anew for it. */
export function useStable<A extends unknown[]>(work: (...given: A) => void): (...given: A) => void {
  const newest = useRef(work)
  useLayoutEffect(() => {
    newest.current = work
  })
  return useCallback((...given: A) => newest.current(...given), [])
}

/** The last value again while a new one says the same. */
export function useSame<T>(value: T): T {
  const last = useRef(value)
  if (!same(last.current, value)) last.current = value
  return last.current
}
