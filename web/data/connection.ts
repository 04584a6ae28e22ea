import { useSyncExternalStore } from 'react'

let reachable = true
const listeners = new Set<() => void>()

/** Every answer of the server, and every silence, is announced here. */
export function announce(answered: boolean): void {
  if (answered === reachable) return
  reachable = answered
  for (const listener of listeners) listener()
}

const subscribe = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

/** Whether the server answered last time. */
export const useReachable = (): boolean => useSyncExternalStore(subscribe, () => reachable)
