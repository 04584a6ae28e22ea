import type { Match, Observation, Seat, Slot } from '../scouting/types.ts'
import { inOrder } from './order.ts'
import { seatKey, seats, slotAt } from './seats.ts'

/** How many records of a robot there are, by how its scout knew which it was. */
export interface RecordCount {
  match: string
  /** Where the record belongs; null where its row says none. */
  seat: Seat | null
  team: string
  identifiedBy: Observation['identifiedBy']
  count: number
}

/** Another team at a place of a match, and what becomes of the records that are there. */
export interface SeatChange {
  seat: Seat
  from: string
  to: string
  /** Records by position: they are about the new team from now on. */
  follow: number
  /** Records by number: they stay with the team that their scout saw. */
  stay: number
}

/** A robot’s state or whether it counts, without another team. */
export interface SlotChange {
  seat: Seat
  team: string
  from: Pick<Slot, 'counts' | 'state'>
  to: Pick<Slot, 'counts' | 'state'>
}

export type MatchChange =
  | { kind: 'added'; match: Match }
  | {
      kind: 'changed'
      before: Match
      match: Match
      /** Its phase, number, play or time is another, or which match it voids. */
      moved: boolean
      teams: SeatChange[]
      slots: SlotChange[]
      result: boolean
    }
  /** Records and results of a removed match are kept, and belong to no match until it is back. */
  | { kind: 'removed'; match: Match; records: number; result: boolean }

export interface WhatChanges {
  changes: MatchChange[]
  /** Matches that stay as they are. */
  same: number
}

export interface Attached {
  records: readonly RecordCount[]
  /** Ids of the matches with a result. */
  results: ReadonlySet<string>
}

/** What is put into a schedule: matches that replace those of their ids or are new, and ids of matches that go. */
export interface ScheduleEdit {
  put: readonly Match[]
  remove: readonly string[]
}

/** The schedule after an edit, in the order of play. */
export function edited(before: readonly Match[], { put, remove }: ScheduleEdit): Match[] {
  const gone = new Set([...remove, ...put.map(({ id }) => id)])
  return [...before.filter(({ id }) => !gone.has(id)), ...put].toSorted(inOrder)
}

/** What an edit would change, match by match in the order of play, with what becomes of records and results. */
export function whatChanges(before: readonly Match[], edit: ScheduleEdit, attached: Attached): WhatChanges {
  const known = new Map(before.map((match) => [match.id, match]))
  const put = edit.put.flatMap((match): MatchChange[] => {
    const earlier = known.get(match.id)
    if (!earlier) return [{ kind: 'added', match }]
    const change = changeOf(earlier, match, attached)
    return change.moved || change.teams.length > 0 || change.slots.length > 0 ? [change] : []
  })
  const gone = new Set(edit.remove)
  const removed = before
    .filter(({ id }) => gone.has(id) && !edit.put.some((match) => match.id === id))
    .map((match): MatchChange => {
      const records = attached.records.filter((each) => each.match === match.id)
      return { kind: 'removed', match, records: sum(records), result: attached.results.has(match.id) }
    })
  const changes = [...put, ...removed].toSorted((a, b) => inOrder(a.match, b.match))
  const touched = changes.filter(({ kind }) => kind !== 'added').length
  return { changes, same: before.length - touched }
}

const sum = (records: readonly RecordCount[]): number => records.reduce((total, { count }) => total + count, 0)

function changeOf(before: Match, match: Match, { records, results }: Attached) {
  const own = records.filter((each) => each.match === match.id)
  const pairs = seats.map((seat) => ({ seat, from: slotAt(before, seat), to: slotAt(match, seat) }))
  const teams = pairs
    .filter(({ from, to }) => from.team !== to.team)
    .map(({ seat, from, to }): SeatChange => {
      const here = own.filter((each) => each.seat !== null && seatKey(each.seat) === seatKey(seat))
      return {
        seat,
        from: from.team,
        to: to.team,
        follow: sum(here.filter(({ identifiedBy }) => identifiedBy === 'position')),
        stay: sum(own.filter(({ identifiedBy, team }) => identifiedBy === 'number' && team === from.team)),
      }
    })
  const slots = pairs
    .filter(({ from, to }) => from.team === to.team && (from.counts !== to.counts || from.state !== to.state))
    .map(
      ({ seat, from, to }): SlotChange => ({
        seat,
        team: to.team,
        from: { counts: from.counts, state: from.state },
        to: { counts: to.counts, state: to.state },
      }),
    )
  const moved = (['phase', 'number', 'play', 'time', 'voids'] as const).some((key) => before[key] !== match[key])
  return { kind: 'changed' as const, before, match, moved, teams, slots, result: results.has(match.id) }
}
