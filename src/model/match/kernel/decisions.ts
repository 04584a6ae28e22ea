/** Of the event loop: what a robot does next. */

import { decideByHabit } from './habit.ts'
import { at } from './layout.ts'
import {
  byte,
  drawWords,
  type f64,
  fillChoices,
  fillList,
  type i32,
  real,
  setReal,
  setWhole,
  tell,
  toWhole,
  whole,
} from './memory.ts'
import { drawn } from './stages.ts'
import {
  ARRIVING,
  COLLECT,
  DRIVES,
  endsAt,
  FINISH,
  IDLE,
  INSTANT,
  LEG_WORDS,
  MARKING,
  MARKS,
  mindOf,
  NEVER,
  NONE,
  NOTHING,
  now,
  RESTS,
  replicate,
  restockTime,
  schedule,
  sideOf,
  stepsIn,
  TIE,
  telling,
  UNKNOWN,
  UNLISTED,
} from './state.ts'

// --- compiled from here on ---

export function decide(i: i32): void {
  const left: f64 = endsAt - now
  const until: f64 = real(at.defendsUntil + i)
  if (left <= real(at.defendsFrom + i) + INSTANT && left > until + INSTANT) {
    setReal(at.markingSince + i, now)
    if (telling) tell(MARKS, i, now, endsAt - until, -1, 0)
    schedule(i, MARKING, endsAt - until)
    return
  }
  const mind: i32 = mindOf(i)
  const stand: i32 = whole(at.stand + i)
  if (whole(mind + at.mindViews) < 0) {
    decideByHabit(i, mind, stand)
    return
  }
  const t: i32 = stepsIn(left)
  const room: i32 = roomFor(i, mind)
  const actions: i32 = whole(whole(mind + at.mindViews) + 4 * stand)
  if (actions >= 0) {
    const best: i32 = byte(actions + room * whole(mind + at.mindTimes) + t)
    if (best === NONE) {
      rest(i, NEVER)
      return
    }
    const leg: i32 = legOf(stand, best)
    if (possible(i, leg)) {
      start(i, leg)
      return
    }
  }
  decideAmongPossible(i, mind, stand, room, t)
}

/** A stand's best legs of its best four places, the best in the lowest byte, NONE where nothing more is worth beginning. */
export function choicesFor(mind: i32, stand: i32, room: i32, t: i32): i32 {
  const cells: i32 = whole(whole(mind + at.mindViews) + 4 * stand + 1)
  if (cells >= 0) {
    const choices: i32 = whole(cells + room * whole(mind + at.mindTimes) + t)
    if (choices !== UNKNOWN) return choices
  }
  return fillChoices(mind, stand, room, t)
}

/** Place of the list of a stand's best legs by place: pairs of a leg's index and its Q. */
export function listFor(mind: i32, stand: i32, room: i32, t: i32): i32 {
  const cells: i32 = whole(whole(mind + at.mindViews) + 4 * stand + 3)
  if (cells >= 0) {
    const list: i32 = whole(cells + room * whole(mind + at.mindTimes) + t)
    if (list >= 0) return list
  }
  return fillList(mind, stand, room, t)
}

export function widthOf(mind: i32, stand: i32): i32 {
  return whole(whole(mind + at.mindViews) + 4 * stand + 2)
}

export function decideAmongPossible(i: i32, mind: i32, stand: i32, room: i32, t: i32): void {
  if (whole(at.standCount + stand) >= UNLISTED) {
    decideFromList(i, mind, stand, room, t)
    return
  }
  let choices: i32 = choicesFor(mind, stand, room, t)
  let restocked: f64 = NEVER
  for (let k: i32 = 0; k < 4; k++) {
    const index: i32 = choices & 255
    if (index === NONE) {
      rest(i, restocked)
      return
    }
    const leg: i32 = legOf(stand, index)
    if (possible(i, leg)) {
      start(i, leg)
      return
    }
    if (whole(leg) === COLLECT && restockTime(whole(leg + 1)) < restocked) restocked = restockTime(whole(leg + 1))
    choices >>= 8
  }
  if (widthOf(mind, stand) > 4) decideFromList(i, mind, stand, room, t)
  else rest(i, restocked)
}

/** The same where a robot has more to choose from than four bytes hold. */
export function decideFromList(i: i32, mind: i32, stand: i32, room: i32, t: i32): void {
  const list: i32 = listFor(mind, stand, room, t)
  const width: i32 = widthOf(mind, stand)
  let best: i32 = -1
  let most: f64 = NOTHING
  let restocked: f64 = NEVER
  for (let k: i32 = 0; k < width; k++) {
    const index: i32 = toWhole(real(list + 2 * k))
    if (index < 0) continue
    const leg: i32 = legOf(stand, index)
    const value: f64 = real(list + 2 * k + 1)
    if (possible(i, leg)) {
      if (value > most + (best < 0 ? 0.0 : TIE)) {
        best = leg
        most = value
      }
    } else if (whole(leg) === COLLECT && restockTime(whole(leg + 1)) < restocked)
      restocked = restockTime(whole(leg + 1))
  }
  if (best >= 0) start(i, best)
  else rest(i, restocked)
}

/** Nothing to do until a restock, the own defence or the call, if one of them is still to come. */
export function rest(i: i32, restocked: f64): void {
  let time: f64 = restocked
  const opens: f64 = endsAt - real(at.defendsFrom + i)
  const call: f64 = endsAt - real(at.callAt + i)
  if (opens > now + INSTANT && opens < time) time = opens
  if (call > now + INSTANT && call < time) time = call
  if (telling) tell(RESTS, i, now, now, -1, 0)
  schedule(i, IDLE, time)
}

export function legOf(stand: i32, index: i32): i32 {
  return whole(whole(at.standLegs + stand) + index)
}

export function stockOf(i: i32, place: i32): i32 {
  return at.stock + place + (whole(at.shared + place) === 1 ? 0 : sideOf(i))
}

export function possible(i: i32, leg: i32): boolean {
  const kind: i32 = whole(leg)
  const place: i32 = whole(leg + 1)
  if (kind === COLLECT) return whole(stockOf(i, place)) >= 1
  if (kind === FINISH) return whole(at.busy + sideOf(i) + place) < whole(at.slots + place)
  return whole(at.counts + sideOf(i) + place) < whole(at.capacity + place)
}

/** Index of the room left for the alliance, as a robot's plan counts it. */
export function roomFor(i: i32, mind: i32): i32 {
  const dimensions: i32 = whole(mind + at.mindDimensions)
  let index: i32 = 0
  for (let d: i32 = 0; d < dimensions; d++) {
    const one: i32 = mind + at.mindFirstDimension + 3 * d
    const place: i32 = whole(one)
    const room: i32 = whole(at.capacity + place) - whole(at.counts + sideOf(i) + place)
    const most: i32 = whole(one + 1)
    index += (room < most ? room : most) * whole(one + 2)
  }
  return index
}

export function start(i: i32, leg: i32): void {
  const words: i32 = whole(at.legWordsOf + i)
  const number: i32 = whole(at.legNumber + i)
  drawWords(words, whole(leg + 8), 8 * i + LEG_WORDS, number, replicate)
  setWhole(at.legNumber + i, number + 1)
  setWhole(at.leg + i, leg)
  setReal(at.startedAt + i, now)
  const form: f64 = real(at.form + i)
  const program: i32 = whole(leg + 2)
  let drive: f64 = 0
  if (whole(program) >= 0) {
    const all: f64 = form * drawn(whole(program), whole(program + 1), words)
    setReal(at.wholeTime + i, all)
    drive = all / 2
  } else {
    const seconds: f64 = real(whole(leg + 9))
    if (seconds > 0) {
      const slow: f64 = real(whole(mindOf(i) + at.mindSlow))
      drive = form * seconds * slow * drawn(whole(at.pace + 2 * i), whole(at.pace + 2 * i + 1), words)
    }
  }
  if (telling) tell(DRIVES, i, now, now + drive, leg, 0)
  schedule(i, ARRIVING, now + drive)
}
