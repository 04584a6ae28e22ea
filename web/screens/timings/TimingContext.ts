import { createContext, useContext } from 'react'
import type { Game, Robot } from '../../../src/model/documents/types.ts'

/** Which mechanism's timing is open on a design's screen, and of which design. */
export interface Timings {
  game: Game
  robot: Robot
  /** Id of a mechanism; null: none. */
  open: string | null
  onOpen(mechanism: string | null): void
}

const Context = createContext<Timings | null>(null)

export const TimingsProvider = Context.Provider

export function useTimings(): Timings {
  const timings = useContext(Context)
  if (!timings) throw new Error('a timing stands outside of its design')
  return timings
}
