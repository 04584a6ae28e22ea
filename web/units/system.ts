import { useSyncExternalStore } from 'react'
import type { System } from './quantities.ts'

const key = 'cyclewright/units'

const kept = (): System => {
  try {
    return localStorage.getItem(key) === 'inchPound' ? 'inchPound' : 'metric'
  } catch {
    return 'metric'
  }
}

let system: System | null = null
const listeners = new Set<() => void>()

const tell = () => {
  for (const listener of listeners) listener()
}

function follow(event: StorageEvent): void {
  if (event.key !== key) return
  system = null
  tell()
}

function subscribe(listener: () => void): () => void {
  if (listeners.size === 0) addEventListener('storage', follow)
  listeners.add(listener)
  return () => {
    listeners.delete(listener)
    if (listeners.size === 0) removeEventListener('storage', follow)
  }
}

function now(): System {
  system ??= kept()
  return system
}

/** The units in which this browser shows and reads; every tab follows a switch. */
export const useUnits = (): System => useSyncExternalStore(subscribe, now, () => 'metric')

/** Switches the units, and keeps the choice in this browser. No document changes. */
export function chooseUnits(next: System): void {
  system = next
  try {
    localStorage.setItem(key, next)
  } catch {
    // A forbidden storage costs the memory of the choice, not the choice.
  }
  tell()
}
