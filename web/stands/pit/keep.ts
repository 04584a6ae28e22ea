import type { RecordDocuments, Row } from '../../../src/model/scouting/types.ts'
import type { StandsDatabase } from '../data/database.ts'
import { madeId } from '../data/ids.ts'
import { addRow } from '../data/outbox.ts'
import { deviceOf } from '../data/session.ts'

type Kind = 'visit' | 'ranking' | 'change' | 'photo' | 'drill'

/** Puts something that is no observation into the outbox. A photo's row has the photo's own id. */
export async function keepRow<K extends Kind>(
  database: StandsDatabase,
  of: { kind: K; body: RecordDocuments[K]; event: string; scout: string },
): Promise<void> {
  const device = await deviceOf(database)
  const { kind, body, event, scout } = of
  const id = kind === 'photo' ? (body as RecordDocuments['photo']).id : madeId()
  const made = new Date().toISOString()
  await addRow(database, device, (sequence) => ({ id, kind, event, device, sequence, scout, made, body }) as Row)
}
