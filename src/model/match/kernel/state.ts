/** Of the event loop: the numbers that all of it shares, and what a robot waits for. Where things lie is said by layout.ts. */

import { at } from './layout.ts'
import { type f64, type i32, real, setReal, setWhole, toWhole, whole } from './memory.ts'

// --- compiled from here on ---

/** What a robot waits for: a decision, its arrival, the end of its leg, the next piece of its leg. */
export const DECIDING: i32 = 0
export const ARRIVING: i32 = 1
export const ENDING: i32 = 2
export const PLACING: i32 = 3
/** Its turn at a place, a restock, the end of its marking, something to do; nothing any more. */
export const QUEUEING: i32 = 4
export const DRAINED: i32 = 5
export const MARKING: i32 = 6
export const IDLE: i32 = 7
export const OVER: i32 = 8

export const COLLECT: i32 = 0
export const SCORE: i32 = 1
export const FINISH: i32 = 2

/** What a replay is told. */
export const DRIVES: i32 = 0
export const QUEUES: i32 = 1
export const WAITS: i32 = 2
export const WORKS: i32 = 3
export const PLACES: i32 = 4
export const FINISHES: i32 = 5
export const MARKS: i32 = 6
export const RESTS: i32 = 7
export const STOPS: i32 = 8

export const NEVER: f64 = 1e300
/** Times are compared with this (s); what is not worth more than NOTHING is not begun (points); later ones must be better by TIE. */
export const INSTANT: f64 = 1e-9
export const NOTHING: f64 = 1e-12
export const TIE: f64 = 1e-12
/** A leg takes this at least (s): legs of no time at all would be begun for ever. */
export const LEAST: f64 = 0.01
export const PER_WORD: f64 = 2.3283064365386963e-10
export const UNLIMITED: i32 = 1073741824

/** No leg, in a byte; four bytes that are not there yet; a stand with so many legs has no bytes for them. */
export const NONE: i32 = 255
export const UNKNOWN: i32 = -2
export const UNLISTED: i32 = 250

/** Random words of a robot's match, of a leg, of its retries and of what an observed robot draws; the numbers are those of words.ts. */
export const MATCH_WORDS: i32 = 0
export const LEG_WORDS: i32 = 2
export const RETRY_WORDS: i32 = 3
export const HABIT_WORDS: i32 = 4

export let now: f64 = 0
export let scheduled: f64 = 0
export let restockNext: f64 = 0
export let replicate: i32 = 0
export let telling: i32 = 0
export let places: i32 = 0
export let sources: i32 = 0
export let endsAt: f64 = 0
export let endgameAt: f64 = 0

/** Reads what is the same all through a match. */
export function begin(match: i32, tells: i32): void {
  replicate = match
  telling = tells
  places = whole(at.places)
  sources = whole(at.sources)
  endsAt = real(at.endsAt)
  endgameAt = real(at.endgameAt)
  now = real(at.teleopAt)
  scheduled = 0
}

export function setNow(time: f64): void {
  now = time
}

export function setRestockNext(time: f64): void {
  restockNext = time
}

export function restockTime(place: i32): f64 {
  return real(at.restockAt + place)
}

/** 0 for ours, the number of places for theirs: where an alliance's numbers by place begin. */
export function sideOf(i: i32): i32 {
  return i < 3 ? 0 : places
}

/** What a robot waits for, and when: a stop that comes before takes its place. */
export function schedule(i: i32, what: i32, time: f64): void {
  const stops: f64 = real(at.stopAt + i)
  setWhole(at.what + i, what)
  setReal(at.time + i, time < stops ? time : stops)
  setReal(at.order + i, scheduled)
  scheduled += 1
}

/** The choices of a robot as it is marked now: the strongest of its markers comes first. */
export function mindOf(i: i32): i32 {
  const minds: i32 = at.minds + 8 * i
  for (let k: i32 = 0; k < 3; k++) {
    const marker: i32 = whole(minds + 2 * k)
    if (marker < 0) break
    if (whole(at.what + marker) === MARKING) return whole(minds + 2 * k + 1)
  }
  return whole(minds + 7)
}

/** Whole steps of the plan's grid in a time left. */
export function stepsIn(left: f64): i32 {
  return left > 0 ? toWhole(left * 10 + INSTANT) : 0
}
