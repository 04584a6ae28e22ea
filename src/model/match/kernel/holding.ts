/** Of the event loop: who holds the goals that pay by the second. Numbers of hold goal h and alliance a (0 ours) stand at 2 · h + a. */

import { at } from './layout.ts'
import { type f64, type i32, real, setReal, setWhole, whole } from './memory.ts'

// --- compiled from here on ---

/** One piece more. */
export function hold(h: i32, a: i32, time: f64): void {
  settle(h, time)
  const one: i32 = 2 * h + a
  setWhole(at.heldPieces + one, whole(at.heldPieces + one) + 1)
  setReal(at.nearBefore + one, real(at.nearBefore + one) + real(at.near + one))
}

/** Seconds since the last change go to whoever leads; they are near where the own lead is 0 or −1. */
export function settle(h: i32, time: f64): void {
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
