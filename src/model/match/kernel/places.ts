/** Of the event loop: arriving at a place, waiting there, and working there. */

import { decide, legOf, listFor, possible, roomFor, stockOf, widthOf } from './decisions.ts'
import { waitsByHabit } from './habit.ts'
import { at } from './layout.ts'
import { type f64, type i32, real, setReal, setWhole, standAfter, tell, toWhole, whole } from './memory.ts'
import { playStages, retries } from './stages.ts'
import {
  COLLECT,
  DRAINED,
  ENDING,
  endgameAt,
  endsAt,
  FINISH,
  LEAST,
  mindOf,
  NEVER,
  NOTHING,
  now,
  PLACING,
  places,
  QUEUEING,
  QUEUES,
  restockTime,
  SCORE,
  schedule,
  sideOf,
  stepsIn,
  telling,
  UNLIMITED,
  WAITS,
  WORKS,
} from './state.ts'

// --- compiled from here on ---

export function arrive(i: i32): void {
  const leg: i32 = whole(at.leg + i)
  const place: i32 = whole(leg + 1)
  const busy: i32 = at.busy + sideOf(i) + place
  setReal(at.arrivedAt + i, now)
  if (whole(busy) < whole(at.slots + place)) {
    setWhole(busy, whole(busy) + 1)
    grant(i)
  } else if (whole(leg) === FINISH) again(i, whole(at.load + i))
  else {
    if (telling) tell(QUEUES, i, now, now, leg, 0)
    const queued: i32 = at.queued + sideOf(i) + place
    const waiting: i32 = whole(queued)
    setWhole(at.queue + 3 * (sideOf(i) + place) + waiting, i)
    setWhole(queued, waiting + 1)
    schedule(i, QUEUEING, NEVER)
  }
}

/** Where a robot stands that has so many pieces in hand after a leg. */
export function standOf(leg: i32, load: i32): i32 {
  const known: i32 = whole(whole(leg + 7) + load)
  return known >= 0 ? known : standAfter(leg, load)
}

/** Decides anew from where the leg has led. */
export function again(i: i32, load: i32): void {
  setWhole(at.stand + i, standOf(whole(at.leg + i), load))
  setWhole(at.load + i, load)
  setWhole(at.leg + i, -1)
  decide(i)
}

export function grant(i: i32): void {
  const leg: i32 = whole(at.leg + i)
  const kind: i32 = whole(leg)
  addWait(i, whole(leg + 1))
  if (kind === COLLECT) take(i, leg)
  else if (kind === SCORE && !possible(i, leg)) {
    free(i, whole(leg + 1))
    again(i, whole(leg + 3))
  } else work(i, leg, whole(leg + 3))
}

export function addWait(i: i32, place: i32): void {
  const waited: i32 = at.waited + i * places + place
  setReal(waited, real(waited) + now - real(at.arrivedAt + i))
}

/** At a source with a slot: takes what there is, waits for more, or gives up. */
export function take(i: i32, leg: i32): void {
  const place: i32 = whole(leg + 1)
  const stock: i32 = stockOf(i, place)
  const there: i32 = whole(stock)
  if (there > 0) {
    const load: i32 = whole(leg + 3)
    const pieces: i32 = load < there ? load : there
    if (there < UNLIMITED) setWhole(stock, there - pieces)
    const taken: i32 = at.taken + i * places + place
    setWhole(taken, whole(taken) + pieces)
    work(i, leg, pieces)
  } else if (waitsFor(i, leg)) {
    setReal(at.arrivedAt + i, now)
    if (telling) tell(WAITS, i, now, now, leg, 0)
    schedule(i, DRAINED, NEVER)
  } else {
    free(i, place)
    again(i, 0)
  }
}

/** Whether waiting at an empty source for its restock is worth at least as much as anything else that can be begun. */
export function waitsFor(i: i32, leg: i32): boolean {
  const place: i32 = whole(leg + 1)
  const restocked: f64 = restockTime(place)
  if (restocked >= NEVER) return false
  const mind: i32 = mindOf(i)
  const stand: i32 = standOf(leg, 0)
  if (whole(mind + at.mindViews) < 0) return waitsByHabit(i, mind, stand, restocked)
  const room: i32 = roomFor(i, mind)
  const list: i32 = listFor(mind, stand, room, stepsIn(endsAt - now))
  const width: i32 = widthOf(mind, stand)
  let most: f64 = 0
  for (let k: i32 = 0; k < width; k++) {
    const index: i32 = toWhole(real(list + 2 * k))
    const value: f64 = real(list + 2 * k + 1)
    if (index >= 0 && value > most && possible(i, legOf(stand, index))) most = value
  }
  if (most <= NOTHING) return true
  const then: f64 = endsAt - restocked
  if (then < 0) return false
  return sameLater(mind, stand, leg, room, stepsIn(then)) >= most
}

/** Q of the same collecting, begun anew at its place later: among the leg's place's legs, the one of that spot and load. */
export function sameLater(mind: i32, stand: i32, leg: i32, room: i32, t: i32): f64 {
  const list: i32 = listFor(mind, stand, room, t)
  const width: i32 = widthOf(mind, stand)
  const all: i32 = list + 2 * width
  // Behind the best by place, the list holds Q of every leg of the stand.
  const legs: i32 = whole(at.standCount + stand)
  for (let k: i32 = 0; k < legs; k++) {
    const other: i32 = legOf(stand, k)
    if (
      whole(other + 1) === whole(leg + 1) &&
      whole(other + 4) === whole(leg + 4) &&
      whole(other + 3) === whole(leg + 3)
    )
      return real(all + k)
  }
  return 0
}

/** Plays the stages: from the grant on those that need the robot in place, the others from the leg's start. */
export function work(i: i32, leg: i32, load: i32): void {
  setWhole(at.load + i, load)
  setWhole(at.counted + i, 0)
  const begun: f64 = real(at.startedAt + i)
  const program: i32 = whole(leg + 2)
  const kind: i32 = whole(leg)
  const lastEach: i32 = whole(program + 3)
  const pieces: i32 = whole(at.piecesOf + i)
  let ends: f64 = 0
  if (whole(program) >= 0) ends = now + real(at.wholeTime + i) / 2
  else ends = begun + playStages(i, program, load)
  if (whole(leg + 5) >= 0) ends += real(at.form + i) * retries(i, leg)
  if (ends < begun + LEAST) ends = begun + LEAST
  if (kind === FINISH && ends < endgameAt) ends = endgameAt
  if (telling) tell(WORKS, i, now, ends, leg, load)
  if (kind === SCORE && lastEach === 0) for (let k: i32 = 0; k < load; k++) setReal(pieces + k, ends)
  if (kind === SCORE && lastEach > 0 && load > 1 && whole(at.matters + whole(leg + 1)) === 1)
    schedule(i, PLACING, real(pieces))
  else schedule(i, ENDING, ends)
}

/** Gives up a slot; whoever waits for it gets it. */
export function free(i: i32, place: i32): void {
  const side: i32 = sideOf(i) + place
  if (whole(at.queued + side) === 0) {
    setWhole(at.busy + side, whole(at.busy + side) - 1)
    return
  }
  const next: i32 = whole(at.queue + 3 * side)
  leaveQueue(side, 0)
  grant(next)
}

export function leaveQueue(side: i32, index: i32): void {
  const count: i32 = whole(at.queued + side) - 1
  setWhole(at.queued + side, count)
  for (let k: i32 = index; k < count; k++) setWhole(at.queue + 3 * side + k, whole(at.queue + 3 * side + k + 1))
}
