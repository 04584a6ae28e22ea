import type { Game } from '../../../src/model/documents/types.ts'
import type { About, Tap } from './draft.ts'

/** What a press writes, but for its time. */
export type Press = Omit<Tap, 'elapsed' | 'period'>

/** Two things that follow each other: the second ends what the first begins. */
export const intervals = [
  { begins: 'unseen', ends: 'seen' },
  { begins: 'stopped', ends: 'running' },
  { begins: 'defending', ends: 'free' },
  { begins: 'defended', ends: 'released' },
] as const

export type Begins = (typeof intervals)[number]['begins']
export type Ends = (typeof intervals)[number]['ends']

/** What can be pressed during the match, as the game has it. */
export interface Form {
  sources: { id: string; name: string }[]
  goals: { id: string; name: string }[]
  /** What happens to pieces besides. */
  others: ('dropped' | 'passed')[]
  intervals: Begins[]
  departs: boolean
  starts: Game['starts']
  finishes: { id: string; name: string }[]
  leaves: boolean
}

const named = ({ id, name }: { id: string; name: string }) => ({ id, name })

/** The form for one record: a human player neither drives nor finishes, and a count has no times. */
export function formOf(game: Game, { subject, mode }: Pick<About, 'subject' | 'mode'>): Form {
  const robot = subject === 'robot'
  const timed = mode === 'timeline'
  return {
    sources: robot && timed ? game.sources.map(named) : [],
    goals: game.goals.map(named),
    others: timed ? (robot ? ['dropped', 'passed'] : ['passed']) : [],
    intervals: timed ? (robot ? intervals.map(({ begins }) => begins) : ['unseen']) : [],
    departs: robot && game.finishes.length > 0,
    starts: robot ? game.starts : [],
    finishes: robot ? game.finishes.map(named) : [],
    leaves: robot && game.leave !== null,
  }
}

/** Which intervals are open after these taps: each of them ends by the press that began it. */
export function openIntervals(taps: readonly Tap[]): Set<Begins> {
  const open = new Set<Begins>()
  for (const { what } of taps)
    for (const { begins, ends } of intervals) {
      if (what === begins) open.add(begins)
      if (what === ends) open.delete(begins)
    }
  return open
}

/** The press that belongs to an interval's button now. */
export function togglePress(begins: Begins, taps: readonly Tap[]): Press {
  const { ends } = intervals.find((each) => each.begins === begins)!
  return { what: openIntervals(taps).has(begins) ? ends : begins }
}

/** Pieces of one press. */
export const amount = ({ n = 1 }: Pick<Tap, 'n'>): number => n
