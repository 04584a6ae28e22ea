/** Of the event loop: pieces that count. */

import { hold } from './holding.ts'
import { at } from './layout.ts'
import { type f64, type i32, real, setReal, setWhole, tell, whole, word } from './memory.ts'
import { PER_WORD, PLACES, places, sideOf, telling } from './state.ts'

// --- compiled from here on ---

/** Pieces of the leg in hand that are due by now: each a success or not, while there is room. */
export function countPieces(i: i32, leg: i32, due: f64): void {
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
export function put(i: i32, place: i32, time: f64): void {
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
