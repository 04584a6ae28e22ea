import { getHeapStatistics } from 'node:v8'
import type { Row } from '../../model/scouting/types.ts'
import type { PrismaClient } from '../generated/client.ts'
import type { EventLog, StoredRecord } from './types.ts'

/**
 * Letters of records that are kept altogether, by the memory that the process may have: 130 million where that is 4 GB, which is 200 events. With all
 * that follows from them (estimates, every team as a robot) a letter takes some 18 bytes. An event with more than that is read anew each time.
 */
const mostLetters = Math.floor(getHeapStatistics().heap_size_limit / 32)

/** What processes tell each other when records that were there have changed. */
export const rewritten = 'records.rewritten'

interface Log extends EventLog {
  letters: number
}

interface Found {
  arrival: number | bigint
  kind: string
  device: string
  receivedAt: string | Date
  body: string | null
  hash: string
  replaces: string | null
  person: string | null
}

type Raw = Pick<PrismaClient, '$queryRaw'>

// A photo is a hundred times as long as anything else, and nobody who asks for all records looks at one.
const later = (client: Raw, { workspaceId, event }: { workspaceId: string; event: string }, after: number) =>
  client.$queryRaw<Found[]>`
  SELECT "arrival", "kind", "device", "receivedAt", "hash", "replaces", "person",
    CASE WHEN "kind" = 'photo' THEN NULL ELSE "body" END AS "body"
  FROM "FieldRecord" WHERE "workspaceId" = ${workspaceId} AND "event" = ${event} AND "arrival" > ${after}
  ORDER BY "arrival"`

const keyOf = (workspaceId: string, event: string) => JSON.stringify([workspaceId, event])

const nothing = (): Log => ({ of: {}, newest: 0, records: [], held: new Map(), letters: 0 })

/**
 * Records of events that were asked for, parsed: after one more came in, only that one is read. Records are added and never
 * changed, and whatever becomes visible later has a higher arrival, since the writers of a workspace take turns until they have
 * committed. So what is kept can not be wrong, whoever wrote it. The one exception is a person who is deleted: then all is forgotten.
 */
export class RecordLogs {
  readonly #most: number
  /** The one asked for last comes last. */
  readonly #logs = new Map<string, Log>()
  readonly #turns = new Map<string, Promise<unknown>>()
  #generation = 0

  constructor(most = mostLetters) {
    this.#most = most
  }

  /** Records that are there have changed, so that all are to be read anew. */
  forget(): void {
    this.#generation++
    this.#logs.clear()
  }

  /** As it was read last, where it is kept. */
  kept(workspaceId: string, event: string): EventLog | null {
    return this.#logs.get(keyOf(workspaceId, event)) ?? null
  }

  /** What an event holds now. One question after the other, so that nothing is added twice. */
  async of(client: Raw, workspaceId: string, event: string): Promise<EventLog> {
    const key = keyOf(workspaceId, event)
    const before = this.#turns.get(key) ?? Promise.resolve()
    const turn = before.catch(() => {}).then(() => this.#read(client, { workspaceId, event, key }))
    this.#turns.set(key, turn)
    try {
      return await turn
    } finally {
      if (this.#turns.get(key) === turn) this.#turns.delete(key)
    }
  }

  async #read(client: Raw, of: { workspaceId: string; event: string; key: string }): Promise<Log> {
    const generation = this.#generation
    const before = this.#logs.get(of.key) ?? nothing()
    const rows = await later(client, of, before.newest)
    const log = rows.length === 0 ? before : withMore(before, rows)
    // Something was changed meanwhile: this answer may have been read before it, and is not kept.
    if (generation !== this.#generation) return log
    this.#logs.delete(of.key)
    this.#logs.set(of.key, log)
    this.#make(of.key)
    return log
  }

  /** Room for the one that was asked for, as far as that is possible. */
  #make(asked: string): void {
    let letters = 0
    for (const log of this.#logs.values()) letters += log.letters
    for (const [key, log] of this.#logs) {
      if (letters <= this.#most) return
      // The last of them: it is too large by itself.
      if (key === asked && this.#logs.size > 1) continue
      this.#logs.delete(key)
      letters -= log.letters
    }
  }
}

function withMore(before: Log, rows: readonly Found[]): Log {
  const held = new Map(before.held)
  const fresh: StoredRecord[] = []
  let { letters } = before
  for (const { arrival, device, receivedAt, body, hash, replaces, person } of rows) {
    held.set(device, (held.get(device) ?? 0) + 1)
    if (body === null) continue
    letters += body.length
    const row = JSON.parse(body) as Row
    const at = new Date(receivedAt).toISOString()
    fresh.push({ arrival: Number(arrival), receivedAt: at, row, hash, replaces, person })
  }
  return { of: before.of, newest: Number(rows.at(-1)!.arrival), records: [...before.records, ...fresh], held, letters }
}
