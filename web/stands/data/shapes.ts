import type { Game } from '../../../src/model/documents/types.ts'
import type { Assignment, EventRecord, Match, Receipt, RowAnswer } from '../../../src/model/scouting/types.ts'

/** Who is signed in on this phone. */
export interface Session {
  claimed: boolean
  person: { id: string; nickname: string; role: string } | null
  device: { id: string; name: string } | null
}

/** What the phone took along of an event. */
export interface Pack {
  event: EventRecord
  game: { revision: number; body: Game }
  matches: Match[]
  assignments: Assignment[]
  people: { id: string; nickname: string }[]
  serverTime: string
  mark: string
}

export interface KeptPack {
  event: string
  pack: Pack
  /** When the server last said that it is the newest (ms since 1970). */
  asked: number
  /** How far the phone's clock was ahead of the server's then (ms). */
  ahead?: number
}

/** A game at one of its revisions: a record that was begun with it is finished with it. */
export interface KeptGame {
  id: string
  revision: number
  body: Game
}

type Fields = { [name: string]: unknown }

const isObject = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)
const isText = (value: unknown): value is string => typeof value === 'string'

/*
 * Whether an answer is the server's own. A captive portal answers everything with a page, or even with JSON of its own: what
 * is not exactly this was never sent. The contracts of the API would say the same, and weigh twice what the page may.
 */

const isAnswer = (value: unknown): value is RowAnswer =>
  isObject(value) &&
  isText(value['id']) &&
  (value['outcome'] === 'held'
    ? typeof value['again'] === 'boolean'
    : (value['outcome'] === 'quarantined' || value['outcome'] === 'refused') && isText(value['why']))

const isReceipt = (value: unknown): value is Receipt =>
  isObject(value) &&
  Number.isInteger(value['held']) &&
  Number.isInteger(value['quarantined']) &&
  isText(value['at']) &&
  !Number.isNaN(Date.parse(value['at']))

export interface Acknowledged {
  answers: RowAnswer[]
  receipt: Receipt
}

export const isAcknowledged = (value: unknown): value is Acknowledged =>
  isObject(value) && Array.isArray(value['answers']) && value['answers'].every(isAnswer) && isReceipt(value['receipt'])

export const isSession = (value: unknown): value is Session =>
  isObject(value) &&
  typeof value['claimed'] === 'boolean' &&
  (value['person'] === null || (isObject(value['person']) && isText(value['person']['id']))) &&
  (value['device'] === null || (isObject(value['device']) && isText(value['device']['id'])))

export const isSame = (value: unknown): value is { same: true; mark: string; serverTime: string } =>
  isObject(value) && value['same'] === true && isText(value['mark']) && isText(value['serverTime'])

export const isPack = (value: unknown): value is Pack =>
  isObject(value) &&
  isObject(value['event']) &&
  isText(value['event']['id']) &&
  isObject(value['game']) &&
  isObject(value['game']['body']) &&
  value['game']['body']['format'] === 1 &&
  Array.isArray(value['matches']) &&
  Array.isArray(value['assignments']) &&
  Array.isArray(value['people']) &&
  isText(value['serverTime']) &&
  isText(value['mark'])

export interface EventHead {
  id: string
  name: string
  startsOn: string | null
}

export const isEventList = (value: unknown): value is EventHead[] =>
  Array.isArray(value) && value.every((each) => isObject(each) && isText(each['id']) && isText(each['name']))
