import type { Row } from '../../src/model/scouting/index.ts'
import { harbour } from '../model/documents/harbour.ts'
import { event, eventId } from './harbourEvent.ts'

/** Puts the game and the event into a server, by the addresses that everybody uses. */
export async function openEvent(url: string): Promise<void> {
  const game = harbour()
  for (const [kind, body] of [
    ['game', game],
    ['event', event],
  ] as const) {
    const answer = await fetch(`${url}/api/documents/${kind}/${body.id}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ base: null, body }),
    })
    if (!answer.ok) throw new Error(`${kind}: ${answer.status} ${await answer.text()}`)
  }
}

/** All records that a server shows of it, by their ids. */
export async function rowsShown(url: string): Promise<Map<string, Row>> {
  const rows = new Map<string, Row>()
  for (let after = 0; ; ) {
    const answer = await fetch(`${url}/api/records?event=${eventId}&after=${after}`)
    const { records } = (await answer.json()) as { records: { arrival: number; row: Row }[] }
    if (records.length === 0) return rows
    for (const { row } of records) rows.set(row.id, row)
    after = records.at(-1)!.arrival
  }
}
