/**
 * The event loop of a match: the one part of the simulation that has to be fast. It works on one stretch of memory and
 * nothing else, so that the same text runs twice: compiled to WebAssembly (`npm run kernel:match`, which puts prelude.as in
 * front of it), and as it is where that is refused. So it keeps to what both understand: whole and real numbers, no objects,
 * no closures. Where things lie in memory is said by layout.ts.
 *
 * Robots 0–2 are ours, 3–5 theirs; times are elapsed seconds since the match's start. Each robot waits for at most one thing,
 * so the next event is the earliest of six.
 *
 * Source: section 5 of the model; event scheduling as in Law, Simulation Modeling and Analysis, 5th ed., section 1.3.
 */

import { decide } from './decisions.ts'
import { settle } from './holding.ts'
import { at } from './layout.ts'
import {
  drawWords,
  earliest,
  type f64,
  type i32,
  lowest,
  notAfter,
  real,
  setReal,
  setWhole,
  tell,
  whole,
  word,
} from './memory.ts'
import { countPieces } from './pieces.ts'
import { addWait, arrive, free, leaveQueue, standOf, take } from './places.ts'
import {
  ARRIVING,
  begin,
  DECIDING,
  DRAINED,
  ENDING,
  endsAt,
  FINISH,
  FINISHES,
  INSTANT,
  MARKING,
  MATCH_WORDS,
  NEVER,
  now,
  OVER,
  PER_WORD,
  PLACING,
  places,
  QUEUEING,
  restockNext,
  restockTime,
  SCORE,
  STOPS,
  schedule,
  scheduled,
  setNow,
  setRestockNext,
  sideOf,
  sources,
  telling,
} from './state.ts'

// --- compiled from here on ---

/** Before a match: nothing taken, nobody waiting, and the words that each robot's match begins with. */
export function clear(match: i32): void {
  const count: i32 = whole(at.places)
  for (let k: i32 = 0; k < 2 * count; k++) {
    setWhole(at.busy + k, 0)
    setWhole(at.queued + k, 0)
  }
  for (let k: i32 = 0; k < 6 * count; k++) {
    setWhole(at.taken + k, 0)
    setReal(at.waited + k, 0)
  }
  for (let i: i32 = 0; i < 6; i++) {
    setReal(at.marked + i, 0)
    setWhole(at.legNumber + i, 0)
    drawWords(at.matchWords + 8 * i, 8, 8 * i + MATCH_WORDS, 0, match)
  }
}

/**
 * Plays teleop. Before it: form, stops, stocks and what autonomous left lie in memory; after it: pieces, finishes, points,
 * waiting and marking.
 */
export function playTeleop(match: i32, tells: i32): void {
  begin(match, tells)
  for (let i: i32 = 0; i < 6; i++) {
    setWhole(at.leg + i, -1)
    setWhole(at.intent + i, -1)
    setWhole(at.what + i, OVER)
    setReal(at.time + i, NEVER)
  }
  setRestockNext(NEVER)
  for (let p: i32 = 0; p < sources; p++) if (restockTime(p) < restockNext) setRestockNext(restockTime(p))
  while (restockNext <= now + INSTANT) restock()
  for (let i: i32 = 0; i < 6; i++) {
    if (whole(at.played + i) === 0) continue
    if (real(at.stopAt + i) <= now) setWhole(at.played + i, 2)
    else schedule(i, DECIDING, now)
  }
  const last: f64 = endsAt + INSTANT
  for (;;) {
    // Without branches: who is next can not be foretold.
    const time: f64 = earliest(at.time)
    const due: i32 = notAfter(at.time, time)
    if (restockNext <= time) {
      if (restockNext > last) break
      setNow(restockNext)
      restock()
      continue
    }
    if (time > last) break
    setNow(time)
    happen((due & (due - 1)) === 0 ? lowest(due) : firstScheduled(due))
  }
  buzzer()
}

/** Of robots whose times are the same: whose was put down first. */
export function firstScheduled(due: i32): i32 {
  let first: i32 = lowest(due)
  for (let i: i32 = first + 1; i < 6; i++)
    if ((due & (1 << i)) !== 0 && real(at.order + i) < real(at.order + first)) first = i
  return first
}

export function happen(i: i32): void {
  if (now >= real(at.stopAt + i)) {
    stop(i)
    return
  }
  const what: i32 = whole(at.what + i)
  if (what === ARRIVING) arrive(i)
  else if (what === ENDING) end(i)
  else if (what === PLACING) placeNext(i)
  else {
    if (what === MARKING) endMarking(i)
    decide(i)
  }
}

export function placeNext(i: i32): void {
  countPieces(i, whole(at.leg + i), now)
  const next: i32 = whole(at.counted + i)
  const left: i32 = whole(at.load + i) - next
  schedule(i, left > 1 ? PLACING : ENDING, real(whole(at.piecesOf + i) + next))
}

export function end(i: i32): void {
  const leg: i32 = whole(at.leg + i)
  const kind: i32 = whole(leg)
  if (kind === FINISH) {
    finish(i, leg)
    return
  }
  if (kind === SCORE) countPieces(i, leg, now)
  const load: i32 = kind === SCORE ? 0 : whole(at.load + i)
  setWhole(at.stand + i, standOf(leg, load))
  setWhole(at.load + i, load)
  setWhole(at.leg + i, -1)
  free(i, whole(leg + 1))
  decide(i)
}

export function finish(i: i32, leg: i32): void {
  const words: i32 = whole(at.legWordsOf + i) + whole(whole(leg + 2) + 4)
  const achieved: boolean = (word(words) + 0.5) * PER_WORD < real(whole(leg + 9) + 1)
  const place: i32 = achieved ? whole(leg + 1) : whole(leg + 11)
  // What is achieved stays: a robot that stops afterwards stops where it is.
  setReal(at.stopAt + i, NEVER)
  setWhole(at.what + i, OVER)
  setReal(at.time + i, NEVER)
  setWhole(at.leg + i, -1)
  if (telling) tell(FINISHES, i, now, now, leg, place)
  if (place < 0) return
  const count: i32 = at.counts + sideOf(i) + place
  setWhole(count, whole(count) + 1)
  setWhole(at.placed + i * places + place, 1)
  setReal(at.points + i, real(at.points + i) + real(at.finishPoints + place))
}

/** All sources that are due: stock first, then those who wait for it, in the order in which they began to. */
export function restock(): void {
  const time: f64 = restockNext
  setRestockNext(NEVER)
  for (let p: i32 = 0; p < sources; p++) {
    if (restockTime(p) === time) {
      setReal(at.restockAt + p, time + real(at.every + p))
      const size: i32 = whole(at.size + p)
      setWhole(at.stock + p, whole(at.stock + p) + size)
      if (whole(at.shared + p) === 0) setWhole(at.stock + places + p, whole(at.stock + places + p) + size)
    }
    if (restockTime(p) < restockNext) setRestockNext(restockTime(p))
  }
  serve(time)
}

export function serve(time: f64): void {
  const before: f64 = scheduled
  for (;;) {
    let next: i32 = -1
    for (let i: i32 = 0; i < 6; i++) {
      if (whole(at.what + i) !== DRAINED || real(at.order + i) >= before) continue
      const place: i32 = whole(whole(at.leg + i) + 1)
      if (restockTime(place) !== time + real(at.every + place)) continue
      if (next < 0 || real(at.order + i) < real(at.order + next)) next = i
    }
    if (next < 0) return
    const leg: i32 = whole(at.leg + next)
    addWait(next, whole(leg + 1))
    take(next, leg)
  }
}

export function endMarking(i: i32): void {
  setReal(at.marked + i, real(at.marked + i) + now - real(at.markingSince + i))
}

/** For good: the leg in hand is lost, what counted before stays. */
export function stop(i: i32): void {
  const leg: i32 = whole(at.leg + i)
  const what: i32 = whole(at.what + i)
  if (what === MARKING) endMarking(i)
  setWhole(at.played + i, 2)
  setWhole(at.what + i, OVER)
  setReal(at.time + i, NEVER)
  if (telling) tell(STOPS, i, now, now, -1, 0)
  if (leg < 0) return
  const place: i32 = whole(leg + 1)
  const side: i32 = sideOf(i) + place
  if (what === QUEUEING) {
    addWait(i, place)
    for (let k: i32 = 0; k < whole(at.queued + side); k++)
      if (whole(at.queue + 3 * side + k) === i) {
        leaveQueue(side, k)
        break
      }
  } else if (what === DRAINED) addWait(i, place)
  else if (what !== ARRIVING && whole(leg) === SCORE) countPieces(i, leg, now)
  setWhole(at.leg + i, -1)
  if (what === ENDING || what === PLACING || what === DRAINED) free(i, place)
}

/** Pieces under way that counted in time; waiting and marking that the buzzer ends. */
export function buzzer(): void {
  setNow(endsAt)
  for (let i: i32 = 0; i < 6; i++) {
    const leg: i32 = whole(at.leg + i)
    const what: i32 = whole(at.what + i)
    if (what === MARKING) endMarking(i)
    if (leg < 0) continue
    if (what === QUEUEING || what === DRAINED) addWait(i, whole(leg + 1))
    if ((what === ENDING || what === PLACING) && whole(leg) === SCORE) countPieces(i, leg, endsAt + INSTANT)
    setWhole(at.leg + i, -1)
  }
  const holds: i32 = whole(at.holds)
  for (let h: i32 = 0; h < holds; h++) settle(h, endsAt)
}
