/**
 * Of the event loop: what an observed robot does next. It weighs nothing: for each trip it draws a goal and a number of pieces
 * by the shares that the event showed, and leaves for a finish at its time. Where its habit begins is said by layout.ts.
 */

import { legOf, possible, rest, start } from './decisions.ts'
import { at } from './layout.ts'
import { drawWords, type f64, type i32, real, setWhole, share, whole, word } from './memory.ts'
import {
  COLLECT,
  endsAt,
  FINISH,
  HABIT_WORDS,
  INSTANT,
  NEVER,
  now,
  PER_WORD,
  replicate,
  restockTime,
  SCORE,
  sideOf,
  TIE,
} from './state.ts'

// --- compiled from here on ---

/** A free robot leaves for a finish if it is time and one is to be had; else it goes on with its trips, or rests until it can. */
export function decideByHabit(i: i32, mind: i32, stand: i32): void {
  const habit: i32 = whole(mind + at.mindHabit)
  let leg: i32 = -1
  if (endsAt - now <= real(at.callAt + i) + INSTANT) leg = bestFinish(i, stand)
  if (leg < 0) {
    // The same leg begun later, after a rest, meets the same words.
    drawWords(at.habitWords, 4, 8 * i + HABIT_WORDS, whole(at.legNumber + i), replicate)
    leg = whole(at.load + i) > 0 ? legToScore(i, habit, stand) : legToCollect(i, habit, stand)
  }
  if (leg >= 0) start(i, leg)
  else rest(i, whole(at.load + i) > 0 ? NEVER : nextRestock(i, habit, stand))
}

/** Of the finishes with a slot to be had the one that pays most, counting how often it succeeds; −1 for none. */
export function bestFinish(i: i32, stand: i32): i32 {
  const legs: i32 = whole(at.standCount + stand)
  let best: i32 = -1
  let most: f64 = 0
  for (let k: i32 = 0; k < legs; k++) {
    const leg: i32 = legOf(stand, k)
    if (whole(leg) !== FINISH || !possible(i, leg)) continue
    const success: f64 = real(whole(leg + 9) + 1)
    let value: f64 = success * real(at.finishPoints + whole(leg + 1))
    if (whole(leg + 11) >= 0) value += (1 - success) * real(at.finishPoints + whole(leg + 11))
    if (value > most + TIE) {
      best = leg
      most = value
    }
  }
  return best
}

/** The trip's own goal if there is room, else one drawn among those with room. */
export function legToScore(i: i32, habit: i32, stand: i32): i32 {
  const goals: i32 = whole(habit + at.habitGoals)
  let known: i32 = 0
  let open: i32 = 0
  for (let g: i32 = 0; g < goals; g++) {
    const leg: i32 = scoringAt(stand, placeOfGoal(habit, g))
    if (leg < 0) continue
    known |= 1 << g
    if (!possible(i, leg)) continue
    open |= 1 << g
    if (whole(leg + 1) === whole(at.intent + i)) return leg
  }
  const g: i32 = goalAmong(habit, known, open)
  return g < 0 ? -1 : scoringAt(stand, placeOfGoal(habit, g))
}

/** Draws a goal, then a source among those that have what it takes, then how many pieces to bring. */
export function legToCollect(i: i32, habit: i32, stand: i32): i32 {
  const goals: i32 = whole(habit + at.habitGoals)
  const own: i32 = sourcesOf(i, stand, false)
  const stocked: i32 = sourcesOf(i, stand, true)
  let known: i32 = 0
  let open: i32 = 0
  for (let g: i32 = 0; g < goals; g++) {
    const takes: i32 = whole(habit + at.habitFirst + 2 * g + 1)
    if ((takes & own) !== 0) known |= 1 << g
    if ((takes & stocked) !== 0 && hasRoom(i, placeOfGoal(habit, g))) open |= 1 << g
  }
  const goal: i32 = goalAmong(habit, known, open)
  setWhole(at.intent + i, goal < 0 ? -1 : placeOfGoal(habit, goal))
  if (goal < 0) return -1
  const source: i32 = bitOf(whole(habit + at.habitFirst + 2 * goal + 1) & stocked, at.habitWords + 1)
  return collectingAt(stand, source, piecesOf(habit))
}

/** The robot's own draw among the goals it knows; where that one is not open, a second draw among those that are; −1 for none. */
export function goalAmong(habit: i32, known: i32, open: i32): i32 {
  const first: i32 = drawnOf(habit, known, word(at.habitWords))
  if (first < 0 || (open & (1 << first)) !== 0) return first
  return drawnOf(habit, open, word(at.habitWords + 3))
}

/** One of some goals by their shares, −1 where all of them have none. */
export function drawnOf(habit: i32, goals: i32, from: f64): i32 {
  const count: i32 = whole(habit + at.habitGoals)
  const shares: i32 = whole(habit + at.habitShares)
  let total: f64 = 0
  for (let g: i32 = 0; g < count; g++) if ((goals & (1 << g)) !== 0) total += real(shares + g)
  let left: f64 = (from + 0.5) * PER_WORD * total
  let last: i32 = -1
  for (let g: i32 = 0; g < count; g++) {
    if ((goals & (1 << g)) === 0 || real(shares + g) <= 0) continue
    last = g
    left -= real(shares + g)
    if (left < 0) return g
  }
  return last
}

/** How many pieces the trip is for, by their shares. */
export function piecesOf(habit: i32): i32 {
  const count: i32 = whole(habit + at.habitCounts)
  const shares: i32 = whole(habit + at.habitCountShares)
  const counts: i32 = habit + at.habitFirst + 2 * whole(habit + at.habitGoals)
  let total: f64 = 0
  for (let k: i32 = 0; k < count; k++) total += real(shares + k)
  let left: f64 = (word(at.habitWords + 2) + 0.5) * PER_WORD * total
  let last: i32 = 1
  for (let k: i32 = 0; k < count; k++) {
    if (real(shares + k) <= 0) continue
    last = whole(counts + k)
    left -= real(shares + k)
    if (left < 0) return last
  }
  return last
}

export function placeOfGoal(habit: i32, g: i32): i32 {
  return whole(habit + at.habitFirst + 2 * g)
}

export function hasRoom(i: i32, place: i32): boolean {
  return whole(at.counts + sideOf(i) + place) < whole(at.capacity + place)
}

/** Sources that legs of the stand lead to, one bit each; those with stock alone where asked. */
export function sourcesOf(i: i32, stand: i32, stocked: boolean): i32 {
  const legs: i32 = whole(at.standCount + stand)
  let bits: i32 = 0
  for (let k: i32 = 0; k < legs; k++) {
    const leg: i32 = legOf(stand, k)
    if (whole(leg) === COLLECT && (!stocked || possible(i, leg))) bits |= 1 << whole(leg + 1)
  }
  return bits
}

/** One of the bits, each as likely, by the random word at a place. */
export function bitOf(bits: i32, place: i32): i32 {
  let count: i32 = 0
  for (let b: i32 = 0; b < 32; b++) if ((bits & (1 << b)) !== 0) count++
  let skip: i32 = share(place, count)
  for (let b: i32 = 0; b < 32; b++) {
    if ((bits & (1 << b)) === 0) continue
    if (skip === 0) return b
    skip--
  }
  return -1
}

export function scoringAt(stand: i32, place: i32): i32 {
  const legs: i32 = whole(at.standCount + stand)
  for (let k: i32 = 0; k < legs; k++) {
    const leg: i32 = legOf(stand, k)
    if (whole(leg) === SCORE && whole(leg + 1) === place) return leg
  }
  return -1
}

/** Of the legs to a source the one for so many pieces, or for the most that the robot carries of that kind. */
export function collectingAt(stand: i32, source: i32, pieces: i32): i32 {
  const legs: i32 = whole(at.standCount + stand)
  let best: i32 = -1
  for (let k: i32 = 0; k < legs; k++) {
    const leg: i32 = legOf(stand, k)
    if (whole(leg) === COLLECT && whole(leg + 1) === source && whole(leg + 3) <= pieces) best = leg
  }
  return best
}

/** When the first of the sources is filled again whose pieces some goal with room takes. */
export function nextRestock(i: i32, habit: i32, stand: i32): f64 {
  const goals: i32 = whole(habit + at.habitGoals)
  let wanted: i32 = 0
  for (let g: i32 = 0; g < goals; g++)
    if (hasRoom(i, placeOfGoal(habit, g))) wanted |= whole(habit + at.habitFirst + 2 * g + 1)
  wanted &= sourcesOf(i, stand, false)
  let first: f64 = NEVER
  for (let p: i32 = 0; p < 32; p++) if ((wanted & (1 << p)) !== 0 && restockTime(p) < first) first = restockTime(p)
  return first
}

/**
 * At an empty source an observed robot waits for the restock, unless another source has what one of its goals takes, or it
 * would leave for its finish, or the match be over, before that.
 */
export function waitsByHabit(i: i32, mind: i32, stand: i32, restocked: f64): boolean {
  const habit: i32 = whole(mind + at.mindHabit)
  const call: f64 = real(at.callAt + i)
  if (restocked > endsAt - (call > 0 ? call : 0.0) + INSTANT) return false
  const goals: i32 = whole(habit + at.habitGoals)
  const stocked: i32 = sourcesOf(i, stand, true)
  for (let g: i32 = 0; g < goals; g++) {
    const takes: i32 = whole(habit + at.habitFirst + 2 * g + 1)
    if ((takes & stocked) !== 0 && hasRoom(i, placeOfGoal(habit, g))) return false
  }
  return true
}
