/**
 * The event loop of a match: the one part of the simulation that has to be fast. It works on one stretch of memory and
 * nothing else, so that the same text runs twice: compiled to WebAssembly (`npm run match-kernel`, which puts prelude.as in
 * front of it), and as it is where that is refused. So it keeps to what both understand: whole and real numbers, no objects,
 * no closures. Where things lie in memory is said by layout.ts.
 *
 * Robots 0–2 are ours, 3–5 theirs; times are elapsed seconds since the match's start. Each robot waits for at most one thing,
 * so the next event is the earliest of six.
 *
 * Source: section 5 of the model; event scheduling as in Law, Simulation Modeling and Analysis, 5th ed., section 1.3.
 */

import { at } from './layout.ts'
// For the plain form only; prelude.as says the same in the other language.
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
  standAfter,
  tell,
  toReal,
  toWhole,
  whole,
  word,
} from './memory.ts'

// --- compiled from here on ---

/** What a robot waits for: a decision, its arrival, the end of its leg, the next piece of its leg. */
const DECIDING: i32 = 0
const ARRIVING: i32 = 1
const ENDING: i32 = 2
const PLACING: i32 = 3
/** Its turn at a place, a restock, the end of its marking, something to do; nothing any more. */
const QUEUEING: i32 = 4
const DRAINED: i32 = 5
const MARKING: i32 = 6
const IDLE: i32 = 7
const OVER: i32 = 8

const COLLECT: i32 = 0
const SCORE: i32 = 1
const FINISH: i32 = 2

/** What a replay is told. */
const DRIVES: i32 = 0
const QUEUES: i32 = 1
const WAITS: i32 = 2
const WORKS: i32 = 3
const PLACES: i32 = 4
const FINISHES: i32 = 5
const MARKS: i32 = 6
const RESTS: i32 = 7
const STOPS: i32 = 8

const NEVER: f64 = 1e300
/** Times are compared with this (s); what is not worth more than NOTHING is not begun (points); later ones must be better by TIE. */
const INSTANT: f64 = 1e-9
const NOTHING: f64 = 1e-12
const TIE: f64 = 1e-12
/** A leg takes this at least (s): legs of no time at all would be begun for ever. */
const LEAST: f64 = 0.01
const PER_WORD: f64 = 2.3283064365386963e-10
const UNLIMITED: i32 = 1073741824

/** No leg, in a byte; four bytes that are not there yet; a stand with so many legs has no bytes for them. */
const NONE: i32 = 255
const UNKNOWN: i32 = -2
const UNLISTED: i32 = 250

/** Random words of a leg and of its retries; the numbers are those of words.ts. */
const LEG_WORDS: i32 = 2
const RETRY_WORDS: i32 = 3

let now: f64 = 0
let scheduled: f64 = 0
let restockNext: f64 = 0
let replicate: i32 = 0
let telling: i32 = 0
let places: i32 = 0
let sources: i32 = 0
let endsAt: f64 = 0
let endgameAt: f64 = 0

/**
 * Plays teleop. Before it: form, stops, stocks and what autonomous left lie in memory; after it: pieces, finishes, points,
 * waiting and marking.
 */
export function playTeleop(match: i32, tells: i32): void {
  replicate = match
  telling = tells
  places = whole(at.places)
  sources = whole(at.sources)
  endsAt = real(at.endsAt)
  endgameAt = real(at.endgameAt)
  now = real(at.teleopAt)
  scheduled = 0
  for (let i: i32 = 0; i < 6; i++) {
    setWhole(at.leg + i, -1)
    setWhole(at.what + i, OVER)
    setReal(at.time + i, NEVER)
  }
  restockNext = NEVER
  for (let p: i32 = 0; p < sources; p++) if (restockTime(p) < restockNext) restockNext = restockTime(p)
  while (restockNext <= now + INSTANT) restock()
  for (let i: i32 = 0; i < 6; i++) {
    if (whole(at.played + i) === 0) continue
    if (real(at.stopAt + i) <= now) setWhole(at.played + i, 2)
    else schedule(i, DECIDING, now)
  }
  const last: f64 = endsAt + INSTANT
  for (;;) {
    let next: i32 = 0
    let time: f64 = real(at.time)
    for (let i: i32 = 1; i < 6; i++) {
      const other: f64 = real(at.time + i)
      if (other < time || (other === time && real(at.order + i) < real(at.order + next))) {
        time = other
        next = i
      }
    }
    if (restockNext <= time) {
      if (restockNext > last) break
      now = restockNext
      restock()
      continue
    }
    if (time > last) break
    now = time
    happen(next)
  }
  buzzer()
}

/** Whole steps of the plan's grid in a time left. */
function stepsIn(left: f64): i32 {
  return left > 0 ? toWhole(left * 10 + INSTANT) : 0
}

function restockTime(place: i32): f64 {
  return real(at.restockAt + place)
}

/** 0 for ours, the number of places for theirs: where an alliance's numbers by place begin. */
function sideOf(i: i32): i32 {
  return i < 3 ? 0 : places
}

function happen(i: i32): void {
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

/** What a robot waits for, and when: a stop that comes before takes its place. */
function schedule(i: i32, what: i32, time: f64): void {
  const stops: f64 = real(at.stopAt + i)
  setWhole(at.what + i, what)
  setReal(at.time + i, time < stops ? time : stops)
  setReal(at.order + i, scheduled)
  scheduled += 1
}

// Decisions

function decide(i: i32): void {
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
function choicesFor(mind: i32, stand: i32, room: i32, t: i32): i32 {
  const cells: i32 = whole(whole(mind + at.mindViews) + 4 * stand + 1)
  if (cells >= 0) {
    const choices: i32 = whole(cells + room * whole(mind + at.mindTimes) + t)
    if (choices !== UNKNOWN) return choices
  }
  return fillChoices(mind, stand, room, t)
}

/** Place of the list of a stand's best legs by place: pairs of a leg's index and its Q. */
function listFor(mind: i32, stand: i32, room: i32, t: i32): i32 {
  const cells: i32 = whole(whole(mind + at.mindViews) + 4 * stand + 3)
  if (cells >= 0) {
    const list: i32 = whole(cells + room * whole(mind + at.mindTimes) + t)
    if (list >= 0) return list
  }
  return fillList(mind, stand, room, t)
}

function widthOf(mind: i32, stand: i32): i32 {
  return whole(whole(mind + at.mindViews) + 4 * stand + 2)
}

function decideAmongPossible(i: i32, mind: i32, stand: i32, room: i32, t: i32): void {
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
function decideFromList(i: i32, mind: i32, stand: i32, room: i32, t: i32): void {
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
function rest(i: i32, restocked: f64): void {
  let time: f64 = restocked
  const opens: f64 = endsAt - real(at.defendsFrom + i)
  const call: f64 = endsAt - real(at.callAt + i)
  if (opens > now + INSTANT && opens < time) time = opens
  if (call > now + INSTANT && call < time) time = call
  if (telling) tell(RESTS, i, now, now, -1, 0)
  schedule(i, IDLE, time)
}

function legOf(stand: i32, index: i32): i32 {
  return whole(whole(at.standLegs + stand) + index)
}

function stockOf(i: i32, place: i32): i32 {
  return at.stock + place + (whole(at.shared + place) === 1 ? 0 : sideOf(i))
}

function possible(i: i32, leg: i32): boolean {
  const kind: i32 = whole(leg)
  const place: i32 = whole(leg + 1)
  if (kind === COLLECT) return whole(stockOf(i, place)) >= 1
  if (kind === FINISH) return whole(at.busy + sideOf(i) + place) < whole(at.slots + place)
  return whole(at.counts + sideOf(i) + place) < whole(at.capacity + place)
}

/** Index of the room left for the alliance, as a robot's plan counts it. */
function roomFor(i: i32, mind: i32): i32 {
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

/** The choices of a robot as it is marked now: the strongest of its markers comes first. */
function mindOf(i: i32): i32 {
  const minds: i32 = at.minds + 8 * i
  for (let k: i32 = 0; k < 3; k++) {
    const marker: i32 = whole(minds + 2 * k)
    if (marker < 0) break
    if (whole(at.what + marker) === MARKING) return whole(minds + 2 * k + 1)
  }
  return whole(minds + 7)
}

// Legs

function drawn(table: i32, count: i32, from: f64): f64 {
  return real(table + toWhole(from * toReal(count) * PER_WORD))
}

function start(i: i32, leg: i32): void {
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
    const all: f64 = form * drawn(whole(program), whole(program + 1), word(words))
    setReal(at.wholeTime + i, all)
    drive = all / 2
  } else {
    const seconds: f64 = real(whole(leg + 9))
    if (seconds > 0) {
      const slow: f64 = real(whole(mindOf(i) + at.mindSlow))
      drive = form * seconds * slow * drawn(whole(at.pace + 2 * i), whole(at.pace + 2 * i + 1), word(words))
    }
  }
  if (telling) tell(DRIVES, i, now, now + drive, leg, 0)
  schedule(i, ARRIVING, now + drive)
}

function arrive(i: i32): void {
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
function standOf(leg: i32, load: i32): i32 {
  const known: i32 = whole(whole(leg + 7) + load)
  return known >= 0 ? known : standAfter(leg, load)
}

/** Decides anew from where the leg has led. */
function again(i: i32, load: i32): void {
  setWhole(at.stand + i, standOf(whole(at.leg + i), load))
  setWhole(at.load + i, load)
  setWhole(at.leg + i, -1)
  decide(i)
}

function grant(i: i32): void {
  const leg: i32 = whole(at.leg + i)
  const kind: i32 = whole(leg)
  addWait(i, whole(leg + 1))
  if (kind === COLLECT) take(i, leg)
  else if (kind === SCORE && !possible(i, leg)) {
    free(i, whole(leg + 1))
    again(i, whole(leg + 3))
  } else work(i, leg, whole(leg + 3))
}

function addWait(i: i32, place: i32): void {
  const waited: i32 = at.waited + i * places + place
  setReal(waited, real(waited) + now - real(at.arrivedAt + i))
}

/** At a source with a slot: takes what there is, waits for more, or gives up. */
function take(i: i32, leg: i32): void {
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
function waitsFor(i: i32, leg: i32): boolean {
  const place: i32 = whole(leg + 1)
  const restocked: f64 = restockTime(place)
  if (restocked >= NEVER) return false
  const mind: i32 = mindOf(i)
  const stand: i32 = standOf(leg, 0)
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
function sameLater(mind: i32, stand: i32, leg: i32, room: i32, t: i32): f64 {
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
function work(i: i32, leg: i32, load: i32): void {
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

/** The longest path through the stages, in seconds from the leg's start; the drive's end is the grant. */
function playStages(i: i32, program: i32, load: i32): f64 {
  const words: i32 = whole(at.legWordsOf + i)
  const begun: f64 = real(at.startedAt + i)
  const form: f64 = real(at.form + i)
  const lastEach: i32 = whole(program + 3)
  const pieces: i32 = whole(at.piecesOf + i)
  const stages: i32 = whole(program + 2)
  let last: f64 = now - begun
  setReal(at.finished, last)
  // Each stage: its number, first word, whether once per piece, table, its length, how many it waits for, and which.
  let one: i32 = program + 5
  for (let k: i32 = 0; k < stages; k++) {
    let time: f64 = 0
    const waits: i32 = whole(one + 5)
    for (let w: i32 = 0; w < waits; w++) {
      const before: f64 = real(at.finished + whole(one + 6 + w))
      if (before > time) time = before
    }
    const stage: i32 = whole(one)
    const from: i32 = words + whole(one + 1)
    const table: i32 = whole(one + 3)
    const count: i32 = whole(one + 4)
    if (whole(one + 2) === 0) time += form * drawn(table, count, word(from))
    else
      for (let n: i32 = 0; n < load; n++) {
        time += form * drawn(table, count, word(from + n))
        if (stage === lastEach) setReal(pieces + n, begun + time)
      }
    setReal(at.finished + stage, time)
    if (time > last) last = time
    one += 6 + waits
  }
  return last
}

/** Time of min(K, 20) retries (s), K geometric: leg + 10 names the chances that K is at most 0, 1, …, 19. */
function retries(i: i32, leg: i32): f64 {
  const words: i32 = at.retryWords
  const number: i32 = whole(at.legNumber + i)
  drawWords(words, 4, 8 * i + RETRY_WORDS, number, replicate)
  const u: f64 = (word(words) + 0.5) * PER_WORD
  const atMost: i32 = whole(leg + 10)
  let tries: i32 = 0
  while (tries < 20 && u >= real(atMost + tries)) tries++
  if (tries > 3) drawWords(words, tries + 1, 8 * i + RETRY_WORDS, number, replicate)
  let time: f64 = 0
  for (let k: i32 = 1; k <= tries; k++) time += drawn(whole(leg + 5), whole(leg + 6), word(words + k))
  return time
}

function placeNext(i: i32): void {
  countPieces(i, whole(at.leg + i), now)
  const next: i32 = whole(at.counted + i)
  const left: i32 = whole(at.load + i) - next
  schedule(i, left > 1 ? PLACING : ENDING, real(whole(at.piecesOf + i) + next))
}

/** Pieces of the leg in hand that are due by now: each a success or not, while there is room. */
function countPieces(i: i32, leg: i32, due: f64): void {
  const pieces: i32 = whole(at.piecesOf + i)
  const words: i32 = whole(at.legWordsOf + i) + whole(whole(leg + 2) + 4)
  const success: f64 = real(whole(leg + 9) + 1)
  const load: i32 = whole(at.load + i)
  for (let k: i32 = whole(at.counted + i); k < load; k++) {
    const time: f64 = real(pieces + k)
    if (time > due) return
    setWhole(at.counted + i, k + 1)
    if ((word(words + k) + 0.5) * PER_WORD < success) put(i, whole(leg + 1), time)
  }
}

/** One successful piece, if there is room for it. */
function put(i: i32, place: i32, time: f64): void {
  const count: i32 = at.counts + sideOf(i) + place
  if (whole(count) >= whole(at.capacity + place)) return
  setWhole(count, whole(count) + 1)
  const placed: i32 = at.placed + i * places + place
  setWhole(placed, whole(placed) + 1)
  setReal(at.points + i, real(at.points + i) + real(at.teleopPoints + place))
  const h: i32 = whole(at.holdOf + place)
  if (h >= 0) hold(h, i < 3 ? 0 : 1, time)
  if (telling) tell(PLACES, i, time, time, whole(at.leg + i), 0)
}

function end(i: i32): void {
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

function finish(i: i32, leg: i32): void {
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

/** Gives up a slot; whoever waits for it gets it. */
function free(i: i32, place: i32): void {
  const side: i32 = sideOf(i) + place
  if (whole(at.queued + side) === 0) {
    setWhole(at.busy + side, whole(at.busy + side) - 1)
    return
  }
  const next: i32 = whole(at.queue + 3 * side)
  leaveQueue(side, 0)
  grant(next)
}

function leaveQueue(side: i32, index: i32): void {
  const count: i32 = whole(at.queued + side) - 1
  setWhole(at.queued + side, count)
  for (let k: i32 = index; k < count; k++) setWhole(at.queue + 3 * side + k, whole(at.queue + 3 * side + k + 1))
}

/** All sources that are due: stock first, then those who wait for it, in the order in which they began to. */
function restock(): void {
  const time: f64 = restockNext
  restockNext = NEVER
  for (let p: i32 = 0; p < sources; p++) {
    if (restockTime(p) === time) {
      setReal(at.restockAt + p, time + real(at.every + p))
      const size: i32 = whole(at.size + p)
      setWhole(at.stock + p, whole(at.stock + p) + size)
      if (whole(at.shared + p) === 0) setWhole(at.stock + places + p, whole(at.stock + places + p) + size)
    }
    if (restockTime(p) < restockNext) restockNext = restockTime(p)
  }
  serve(time)
}

function serve(time: f64): void {
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

// Holding: numbers of hold goal h and alliance a (0 ours, 1 theirs) at 2 · h + a

/** One piece more. */
function hold(h: i32, a: i32, time: f64): void {
  settle(h, time)
  const one: i32 = 2 * h + a
  setWhole(at.heldPieces + one, whole(at.heldPieces + one) + 1)
  setReal(at.nearBefore + one, real(at.nearBefore + one) + real(at.near + one))
}

/** Seconds since the last change go to whoever leads; they are near where the own lead is 0 or −1. */
function settle(h: i32, time: f64): void {
  const elapsed: f64 = time - real(at.heldSince + h)
  setReal(at.heldSince + h, time)
  const ours: i32 = 2 * h
  const lead: i32 = whole(at.heldPieces + ours) - whole(at.heldPieces + ours + 1)
  if (lead !== 0) {
    const one: i32 = lead > 0 ? ours : ours + 1
    setReal(at.heldSeconds + one, real(at.heldSeconds + one) + elapsed)
    setReal(at.heldPoints + one, real(at.heldPoints + one) + elapsed * real(at.holdRate + h))
  }
  if (lead === 0 || lead === -1) setReal(at.near + ours, real(at.near + ours) + elapsed)
  if (lead === 0 || lead === 1) setReal(at.near + ours + 1, real(at.near + ours + 1) + elapsed)
}

// Ends

function endMarking(i: i32): void {
  setReal(at.marked + i, real(at.marked + i) + now - real(at.markingSince + i))
}

/** For good: the leg in hand is lost, what counted before stays. */
function stop(i: i32): void {
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
function buzzer(): void {
  now = endsAt
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
