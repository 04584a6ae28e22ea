/** Of the event loop: how long a leg takes. */

import { at } from './layout.ts'
import { drawWords, type f64, type i32, real, setReal, share, whole, word } from './memory.ts'
import { now, PER_WORD, RETRY_WORDS, replicate } from './state.ts'

// --- compiled from here on ---

/** The value of a table of equally likely ones that a random word stands for. */
export function drawn(table: i32, count: i32, place: i32): f64 {
  return real(table + share(place, count))
}

/** The longest path through the stages, in seconds from the leg's start; the drive's end is the grant. */
export function playStages(i: i32, program: i32, load: i32): f64 {
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
    if (whole(one + 2) === 0) time += form * drawn(table, count, from)
    else
      for (let n: i32 = 0; n < load; n++) {
        time += form * drawn(table, count, from + n)
        if (stage === lastEach) setReal(pieces + n, begun + time)
      }
    setReal(at.finished + stage, time)
    if (time > last) last = time
    one += 6 + waits
  }
  return last
}

/** Time of min(K, 20) retries (s), K geometric: leg + 10 names the chances that K is at most 0, 1, …, 19. */
export function retries(i: i32, leg: i32): f64 {
  const words: i32 = at.retryWords
  const number: i32 = whole(at.legNumber + i)
  drawWords(words, 4, 8 * i + RETRY_WORDS, number, replicate)
  const u: f64 = (word(words) + 0.5) * PER_WORD
  const atMost: i32 = whole(leg + 10)
  let tries: i32 = 0
  while (tries < 20 && u >= real(atMost + tries)) tries++
  if (tries > 3) drawWords(words, tries + 1, 8 * i + RETRY_WORDS, number, replicate)
  let time: f64 = 0
  for (let k: i32 = 1; k <= tries; k++) time += drawn(whole(leg + 5), whole(leg + 6), words + k)
  return time
}
