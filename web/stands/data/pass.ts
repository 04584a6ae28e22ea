import { batchOf, mostRows } from './batch.ts'
import { type Kept, recall, remember, type StandsDatabase } from './database.ts'
import { mayBeSent, onlyHere, takeAnswers } from './outbox.ts'
import { type Ask, askSession, type Failed, postRows } from './post.ts'
import { keepSession } from './session.ts'

export interface Means {
  database: StandsDatabase
  ask: Ask
  now: () => number
  /** Version of the page, for the lead's list of devices. */
  app: string
}

/** How a pass over the outbox ended; `empty` where nothing is left that may be sent from here. */
export type Passed = 'empty' | Exclude<Failed, { failed: 'unreadable' }>

/**
 * Sends what may be sent, batch after batch, until nothing is left or something is in the way. Before each batch it asks who is
 * signed in: rows never go under another person's name.
 */
export async function passOver({ database, ask, now, app }: Means): Promise<Passed> {
  let most = mostRows
  for (;;) {
    const session = await askSession(ask, now())
    if ('failed' in session) return session.failed === 'unreadable' ? { failed: 'noServer' } : session
    await keepSession(database, session.answer)
    const waiting = await database.outbox.where('state').equals('phone').toArray()
    const mine = waiting.filter((row) => mayBeSent(row, session.answer))
    if (mine.length === 0) {
      return waiting.length > 0 && session.answer.claimed && !session.answer.person ? { failed: 'signIn' } : 'empty'
    }
    const rows = batchOf(mine, most)
    const here = await database.outbox.filter(onlyHere).count()
    const posted = await postRows(ask, { rows, unsent: here - rows.length, app, now: now() })
    if ('answer' in posted) {
      const { answers, receipt } = posted.answer
      const dealt = await takeAnswers(database, answers, { sent: rows, now: now() })
      await remember(database, 'receipt', { ...receipt, device: rows[0]!.device })
      // Answers about other rows than those sent are no answers: without this the same batch would go out for ever.
      if (dealt === 0) return { failed: 'noServer' }
      most = mostRows
    } else if (posted.failed !== 'unreadable') {
      return posted
    } else if (rows.length > 1) {
      most = Math.floor(rows.length / 2)
    } else {
      await refusedAlone(database, rows[0]!, { why: posted.why, now: now() })
      most = mostRows
    }
  }
}

/** A row that the server can not read even alone does not hold up the others: it stays here, and says why. */
async function refusedAlone({ outbox }: StandsDatabase, { id }: Kept, { why, now }: { why: string; now: number }) {
  await outbox.update(id, { state: 'attention', outcome: 'refused', why, answered: now })
}

/** Whether something waits that this phone may send. */
export async function somethingWaits(database: StandsDatabase): Promise<boolean> {
  const session = await recall(database, 'session')
  const waiting = await database.outbox.where('state').equals('phone').toArray()
  // Before the first answer it is not known whose phone this is.
  return waiting.some((row) => session === undefined || mayBeSent(row, session))
}
