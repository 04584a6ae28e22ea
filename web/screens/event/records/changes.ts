import { canonicalJson } from '../../../../src/model/scouting/canonical.ts'
import type { Observation, Row, Seat } from '../../../../src/model/scouting/types.ts'
import type { api } from '../../../data/board.ts'
import type { Correctable } from './typed.ts'

type Request = Parameters<typeof api.correct>[0]

const clearable = [
  'absent',
  'leftStart',
  'timeline',
  'counts',
  'finish',
  'defence',
  'lostSeconds',
  'stoppedAt',
  'departedAt',
  'fouls',
  'note',
] as const
const always = ['match', 'team', 'identifiedBy'] as const

/**
 * What a correction has to say so that a record says `next`: null where it does so already.
 *
 * @param team whom the record is about by the schedule as it is now
 */
export function changesOf(
  row: Extract<Row, { kind: 'observation' }>,
  next: Correctable,
  { team, seat }: { team: string; seat: Seat | undefined },
): Pick<Request, 'changes' | 'clear' | 'seat'> | null {
  const now: Partial<Observation> = { ...row.body, team }
  const differs = (key: keyof Correctable) => canonicalJson(now[key] ?? null) !== canonicalJson(next[key] ?? null)
  const changed = [...always, ...clearable].filter(differs)
  if (changed.length === 0) return null
  const clear = clearable.filter((key) => changed.includes(key) && next[key] === undefined)
  const changes = Object.fromEntries(changed.filter((key) => next[key] !== undefined).map((key) => [key, next[key]]))
  const moved = changed.includes('team') || changed.includes('match')
  return {
    changes: changes as Request['changes'],
    ...(clear.length > 0 && { clear: [...clear] }),
    ...(moved && seat && { seat }),
  }
}

/** The row as it would be after a correction, to be shown beside what it is. */
export function rowWith(
  row: Extract<Row, { kind: 'observation' }>,
  next: Correctable,
  seat: Seat | undefined,
): Extract<Row, { kind: 'observation' }> {
  const { seat: own, ...rest } = row
  const place = seat ?? own
  const body = { ...row.body, ...Object.fromEntries(clearable.map((key) => [key, undefined])), ...next }
  return { ...rest, ...(place && { seat: place }), body: JSON.parse(JSON.stringify(body)) as Observation }
}
