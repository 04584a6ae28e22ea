import { useSyncExternalStore } from 'react'

let asked = false
const listeners = new Set<() => void>()

/** Whether somebody has to sign in before the server answers: said by whoever hears its 401. */
export function askSignIn(next: boolean): void {
  if (asked === next) return
  asked = next
  for (const listener of listeners) listener()
}

const subscribe = (listener: () => void) => {
  listeners.add(listener)
  return () => listeners.delete(listener)
}

export const useSignInAsked = (): boolean => useSyncExternalStore(subscribe, () => asked)
