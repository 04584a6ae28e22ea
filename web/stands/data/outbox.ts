import type { Row, RowAnswer } from '../../../src/model/scouting/types.ts'
import type { Draft, Tap } from '../record/draft.ts'
import { rowOf } from '../record/observation.ts'
import type { Kept, StandsDatabase } from './database.ts'
import type { Session } from './shapes.ts'

/** The next number of a device: counted from the rows themselves, so that no counter can fall behind them. */
async function nextSequence({ outbox }: StandsDatabase, device: string): Promise<number> {
  const last = await outbox.where('[device+sequence]').between([device, 0], [device, Number.MAX_SAFE_INTEGER]).last()
  return (last?.sequence ?? 0) + 1
}

/** Adds a row under the device's next number; a row that is there already stays as it is. */
export function addRow(database: StandsDatabase, device: string, make: (sequence: number) => Row): Promise<Kept> {
  return database.transaction('rw', database.outbox, async () => {
    const row = make(await nextSequence(database, device))
    const known = await database.outbox.get(row.id)
    if (known) return known
    const { id, event, sequence, scout } = row
    const kept: Kept = { id, event, device, sequence, scout, state: 'phone', row }
    await database.outbox.add(kept)
    return kept
  })
}

/** Turns a draft into a record: both at once, so that a killed browser leaves either the draft or the record. */
export function saveDraft(
  database: StandsDatabase,
  draft: Draft,
  { device, now }: { device: string; now: number },
): Promise<Kept> {
  const { outbox, drafts, taps } = database
  return database.transaction('rw', [outbox, drafts, taps], async () => {
    const made = new Date(now).toISOString()
    const pressed = await tapsOf(database, draft.id)
    const kept = await addRow(database, device, (sequence) => rowOf(draft, pressed, { device, sequence, made }))
    await drafts.put({ ...draft, step: 'saved' })
    return kept
  })
}

/** A draft's taps in the order in which they were pressed. */
export async function tapsOf({ taps }: StandsDatabase, draft: string): Promise<Tap[]> {
  const found = await taps.where('draft').equals(draft).sortBy('order')
  return found.map(({ draft: _, order: _order, ...tap }) => tap)
}

/** Whose rows a phone may send now: those of whoever is signed in, or anybody's where nobody has to. */
export function mayBeSent({ scout }: Pick<Kept, 'scout'>, session: Session | undefined): boolean {
  if (!session) return false
  return session.claimed ? session.person?.id === scout : true
}

/** What the server said of rows; of those that it did not mention nothing changes. Returns how many it dealt with. */
export function takeAnswers(
  database: StandsDatabase,
  answers: readonly RowAnswer[],
  { sent, now }: { sent: readonly Kept[]; now: number },
): Promise<number> {
  return database.transaction('rw', database.outbox, async () => {
    const waiting = new Set(sent.map(({ id }) => id))
    let dealt = 0
    for (const answer of answers) {
      if (!waiting.delete(answer.id)) continue
      dealt++
      await database.outbox.update(
        answer.id,
        answer.outcome === 'held'
          ? { state: 'server', outcome: undefined, why: undefined, answered: now }
          : { state: 'attention', outcome: answer.outcome, why: answer.why, answered: now },
      )
    }
    return dealt
  })
}

export interface Counts {
  phone: number
  server: number
  attention: number
}

/** How many rows are where; rows that may not be sent from here now need somebody too. */
export function countsIn(rows: readonly Pick<Kept, 'state' | 'scout'>[], session: Session | undefined): Counts {
  const counts: Counts = { phone: 0, server: 0, attention: 0 }
  for (const row of rows) counts[shownState(row, session)]++
  return counts
}

/** What a row's sign says. A row that waits for a connection is on this phone; one that waits for its owner needs somebody. */
export function shownState(row: Pick<Kept, 'state' | 'scout'>, session: Session | undefined): Kept['state'] {
  if (row.state !== 'phone' || !session) return row.state
  return mayBeSent(row, session) ? 'phone' : 'attention'
}

/** Rows that only this phone has: what is not held, and not kept apart on the server either. */
export const onlyHere = ({ state, outcome }: Pick<Kept, 'state' | 'outcome'>): boolean =>
  state === 'phone' || outcome === 'refused'

/** Lets rows that could not be read be sent anew. */
export async function tryAgain({ outbox }: StandsDatabase): Promise<void> {
  await outbox
    .where('state')
    .equals('attention')
    .and(({ outcome }) => outcome === 'refused')
    .modify({ state: 'phone' })
}
