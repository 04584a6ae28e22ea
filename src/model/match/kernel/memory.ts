import { philox } from '../../random/index.ts'
import { at } from './layout.ts'

/** The plain form of what prelude.as says for the compiled one: reading and writing one stretch of memory. */

/** What the event loop asks of its owner in the middle of a match. */
export interface Host {
  /** Computes the best four legs of a stand: one byte each. */
  fillChoices(mind: number, stand: number, room: number, t: number): number
  /** Computes a list that is not there yet: its place. */
  fillList(mind: number, stand: number, room: number, t: number): number
  /** Makes a stand that is not there yet: its number. */
  standAfter(leg: number, load: number): number
  /** Something that a replay shows. */
  tell(kind: number, robot: number, from: number, to: number, leg: number, more: number): void
}

/** One stretch of memory, seen as numbers of each kind; renewed when it grows. */
export interface Views {
  reals: Float64Array
  wholes: Int32Array
  bytes: Uint8Array
  words: Uint32Array
}

let reals = new Float64Array(0)
let wholes = new Int32Array(0)
let bytes = new Uint8Array(0)
let wordsOf = new Uint32Array(0)
let host: Host | null = null

/** Says whose memory is worked on until the next call. */
export function bind(views: Views, owner: Host): void {
  reals = views.reals as Float64Array<ArrayBuffer>
  wholes = views.wholes as Int32Array<ArrayBuffer>
  bytes = views.bytes as Uint8Array<ArrayBuffer>
  wordsOf = views.words as Uint32Array<ArrayBuffer>
  host = owner
}

/** Whole numbers of 32 bits and real ones of 64, in the other language's words. */
export type i32 = number
export type f64 = number

export const toReal = (x: i32): f64 => x
export const toWhole = (x: f64): i32 => x | 0
export const real = (place: number): number => reals[place] as number
export const whole = (place: number): number => wholes[place] as number
export const byte = (place: number): number => bytes[place] as number
/** A random word, as a real number from 0 to 2³² − 1. */
export const word = (place: number): number => wordsOf[place] as number

/** Which of `count` equal shares of all words a random word falls into. */
export const share = (place: number, count: number): number => Math.floor((wordsOf[place] as number) * count * 2 ** -32)
/** The least of six real numbers. */
export function earliest(place: number): number {
  let least = real(place)
  for (let k = 1; k < 6; k++) if (real(place + k) < least) least = real(place + k)
  return least
}
/** One bit for each of six real numbers: whether it is no more than this. */
export function notAfter(place: number, time: number): number {
  let bits = 0
  for (let k = 0; k < 6; k++) if (real(place + k) <= time) bits |= 1 << k
  return bits
}
/** Place of the lowest bit that is set. */
export const lowest = (bits: number): number => 31 - Math.clz32(bits & -bits)

export function setReal(place: number, x: number): void {
  reals[place] = x
}

export function setWhole(place: number, x: number): void {
  wholes[place] = x
}

export const fillChoices: Host['fillChoices'] = (...asked) => (host as Host).fillChoices(...asked)
export const fillList: Host['fillList'] = (...asked) => (host as Host).fillList(...asked)
export const standAfter: Host['standAfter'] = (...asked) => (host as Host).standAfter(...asked)
export const tell: Host['tell'] = (...told) => (host as Host).tell(...told)

const counter = new Uint32Array(4)
const key = new Uint32Array(2)
const four = new Uint32Array(4)

/** `count` random words from a place on, and up to seven more: see words.ts for what they are functions of. */
export function drawWords(place: number, count: number, name: number, leg: number, replicate: number): void {
  key[0] = wholes[at.key] as number
  key[1] = wholes[at.key + 1] as number
  counter[1] = leg
  counter[2] = name
  counter[3] = replicate
  for (let k = 0; k < count; k += 4) {
    counter[0] = k >> 2
    philox(counter, key, four)
    for (let i = 0; i < 4; i++) wordsOf[place + k + i] = four[i] as number
  }
}
