import { type Happening, happenings } from '../types.ts'
import type { Reader, Writer } from './bytes.ts'
import { CodeError } from './failure.ts'
import { type IdTable, type Place, readId, writeId } from './ids.ts'
import { readNumber, writeNumber } from './values.ts'

/**
 * A tap is 24 bits: tenths of a second since the one before (9), what it was (4), where (5: 0 nowhere, else a place of the
 * game's table), how many (4: 0 unsaid, else 1 to 15) and how that is known (2). Two codes of `what` are no happening:
 * `spotted` is a tap with a place on the field in tenths of a metre behind it, `spelled` one that is written out.
 */
const [spotted, spelled] = [14, 15]
const longest = 511
const counted = [undefined, 'each', 'estimate'] as const

const tenths = (value: number): number | null => {
  const whole = Math.round(value * 10)
  return whole / 10 === value && whole >= 0 ? (whole === 0 ? 0 : whole) : null
}

const word = (delta: number, what: number, rest: number): number => delta * 2 ** 15 + what * 2 ** 11 + rest

function placeOf(tap: Happening, table: IdTable): number | null {
  if (tap.goal === undefined && tap.source === undefined) return 0
  const place = table.places.findIndex(({ goal, source }) => goal === tap.goal && source === tap.source) + 1
  return place >= 1 && place < 32 ? place : null
}

/** Where on the field, in tenths of a metre from 0 to 25.5; null: elsewhere, or finer. */
function spotOf(tap: Happening): [number, number] | null {
  const spot = [tap.x, tap.y].map((value) => (value === undefined ? null : tenths(value)))
  return spot.every((value): value is number => value !== null && value < 256) ? (spot as [number, number]) : null
}

/** The short form of a tap, with 3 bytes, or 5 where it has a place on the field; null: it has none. */
function writeShort(writer: Writer, tap: Happening, delta: number, table: IdTable): boolean {
  const place = placeOf(tap, table)
  const n = tap.n ?? 0
  const how = counted.indexOf(tap.counted)
  const what = happenings.indexOf(tap.what)
  if (place === null || (tap.n !== undefined && !(n >= 1 && n <= 15))) return false
  if (tap.x === undefined && tap.y === undefined) {
    writer.fixed(word(delta, what, place * 64 + n * 4 + how), 3)
    return true
  }
  const spot = spotOf(tap)
  // Of many pieces at a place on the field there is no short form: what is left is one bit for 'one', one for 'counted'.
  if (!spot || n > 1 || tap.counted === 'estimate') return false
  writer.fixed(word(delta, spotted!, place * 64 + what * 4 + n * 2 + how), 3).all(spot)
  return true
}

const [hasGoal, hasSource, hasNumber, hasX, hasY] = [1, 2, 4, 8, 16]

function writeSpelled(writer: Writer, tap: Happening, table: IdTable): void {
  const has =
    (tap.goal === undefined ? 0 : hasGoal!) +
    (tap.source === undefined ? 0 : hasSource!) +
    (tap.n === undefined ? 0 : hasNumber!) +
    (tap.x === undefined ? 0 : hasX!) +
    (tap.y === undefined ? 0 : hasY!)
  writer.fixed(word(0, spelled!, happenings.indexOf(tap.what) * 128 + has * 4 + counted.indexOf(tap.counted)), 3)
  writeNumber(writer, tap.elapsed)
  if (tap.goal !== undefined) writeId(writer, tap.goal, table)
  if (tap.source !== undefined) writeId(writer, tap.source, table)
  if (tap.n !== undefined) writeNumber(writer, tap.n)
  if (tap.x !== undefined) writeNumber(writer, tap.x)
  if (tap.y !== undefined) writeNumber(writer, tap.y)
}

/** Deltas count from the last time that has tenths, so that one odd time does not spell out the rest. */
export function writeTaps(writer: Writer, taps: readonly Happening[], table: IdTable): void {
  writer.whole(taps.length)
  let before = 0
  for (const tap of taps) {
    const now = tenths(tap.elapsed)
    const delta = now === null ? -1 : now - before
    if (now === null || delta < 0 || delta > longest || !writeShort(writer, tap, delta, table))
      writeSpelled(writer, tap, table)
    if (now !== null) before = now
  }
}

function placed(place: number, table: IdTable): Place {
  if (place === 0) return {}
  const found = table.places[place - 1]
  if (!found) throw new CodeError('damaged')
  return found
}

const whatOf = (index: number): Happening['what'] => {
  const what = happenings[index]
  if (!what) throw new CodeError('damaged')
  return what
}

function howOf(index: number): Pick<Happening, 'counted'> {
  if (index >= counted.length) throw new CodeError('damaged')
  const how = counted[index]
  return how === undefined ? {} : { counted: how }
}

function readSpelled(reader: Reader, rest: number, table: IdTable): Happening {
  const has = (rest >> 2) & 31
  return {
    elapsed: readNumber(reader),
    what: whatOf(rest >> 7),
    ...(has & hasGoal! && { goal: readId(reader, table) }),
    ...(has & hasSource! && { source: readId(reader, table) }),
    ...(has & hasNumber! && { n: readNumber(reader) }),
    ...howOf(rest & 3),
    ...(has & hasX! && { x: readNumber(reader) }),
    ...(has & hasY! && { y: readNumber(reader) }),
  }
}

function readTap(reader: Reader, before: number, table: IdTable): Happening {
  const bits = reader.fixed(3)
  const [delta, what, rest] = [bits >> 15, (bits >> 11) & 15, bits & 2047]
  if (what === spelled) return readSpelled(reader, rest, table)
  const elapsed = (before + delta) / 10
  const place = placed(rest >> 6, table)
  if (what !== spotted) {
    const n = (rest >> 2) & 15
    return { elapsed, what: whatOf(what), ...place, ...(n > 0 && { n }), ...howOf(rest & 3) }
  }
  return {
    elapsed,
    what: whatOf((rest >> 2) & 15),
    ...place,
    ...(rest & 2 && { n: 1 }),
    ...(rest & 1 && { counted: 'each' as const }),
    x: reader.byte() / 10,
    y: reader.byte() / 10,
  }
}

export function readTaps(reader: Reader, table: IdTable): Happening[] {
  const taps: Happening[] = []
  let before = 0
  for (let left = reader.whole(); left > 0; left--) {
    const tap = readTap(reader, before, table)
    before = tenths(tap.elapsed) ?? before
    taps.push(tap)
  }
  return taps
}
