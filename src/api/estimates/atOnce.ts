import * as z from 'zod'
import { type Known, type Stood, standsAt } from '../records/known.ts'
import type { Context } from '../trpc.ts'

/** What an answer that was made before lacks. */
export const behind = z
  .strictObject({
    records: z.int().describe('That came in since'),
    other: z.boolean().describe('Results, a decision over records, seats or the earlier event have changed since'),
  })
  .nullable()
  .describe('What this does not know yet, where it was made before; null: nothing')

export type Behind = z.infer<typeof behind>

export const kept = z
  .boolean()
  .optional()
  .describe(
    'True: answers at once with what was made last, where there is such, says in `behind` what that lacks, and makes it anew beside. Else the answer is made from all that is known',
  )

interface Made<Of> {
  at: Stood
  of: Of
}

/** What was made last, what it lacks, and where the event stands now. */
interface Taken<Of> {
  of: Of
  behind: Behind
  at: Pick<Stood, 'frame' | 'rest'>
}

/** Of each event so many answers are kept, those that were made last. */
const most = 60

/**
 * The last answers that were made of each event whose records are kept, whatever has come in since; they go with the records. Of two
 * the one that knew more stays.
 */
export class LastMade<Of> {
  readonly #made = new WeakMap<object, Map<string, Made<Of>>>()

  keep(log: { of: object }, { key, known, of }: { key: string; known: Known; of: Of }): void {
    const all = this.#made.get(log.of) ?? new Map<string, Made<Of>>()
    this.#made.set(log.of, all)
    const before = all.get(key)
    if (before && before.at.newest > known.at.newest) return
    all.delete(key)
    all.set(key, { at: known.at, of })
    const [oldest] = all.keys()
    if (all.size > most) all.delete(oldest!)
  }

  /**
   * What was made last, and what it lacks; that is then made anew by `make`, for whoever asks next. Null where there is none, or where
   * schedule, teams or rules have changed: it would be said of other matches than there are.
   */
  async take(
    ctx: Asking,
    { event, key, make }: { event: string; key: string; make: () => Promise<unknown> },
  ): Promise<Taken<Of> | null> {
    const log = ctx.workspace.records.logKept(event)
    const all = log && this.#made.get(log.of)
    const made = all?.get(key)
    if (!log || !all || !made) return null
    const now = await standsAt(ctx.workspace, { event, newest: made.at.newest })
    if (now?.frame !== made.at.frame) return null
    const other = now.rest !== made.at.rest
    const at = { frame: now.frame, rest: now.rest }
    if (now.records === 0 && !other) return { of: made.of, behind: null, at }
    makeAnew(ctx, {
      event,
      of: log.of,
      name: key,
      make: () =>
        make().catch((error: unknown) => {
          // Whoever asks next hears why, instead of what is older and older.
          all.delete(key)
          throw error
        }),
    })
    return { of: made.of, behind: { records: now.records, other }, at }
  }
}

type Asking = Pick<Context, 'workspace' | 'hear' | 'log'>

/** Answers of an event that are to be made anew, one after the other. */
const waiting = new WeakMap<object, Map<string, () => Promise<unknown>>>()

/** One of an event at a time, each from what is known when its turn comes: whatever comes in until then is in it. */
function makeAnew(
  ctx: Asking,
  { event, of, name, make }: { event: string; of: object; name: string; make: () => Promise<unknown> },
): void {
  const line = waiting.get(of)
  if (line) {
    line.set(name, make)
    return
  }
  const mine = new Map([[name, make]])
  waiting.set(of, mine)
  const work = async () => {
    // What is asked for while this goes on comes behind.
    for (const [each, makes] of mine) {
      await calm(ctx, event)
      mine.delete(each)
      await makes().catch(ctx.log)
    }
    waiting.delete(of)
  }
  void work()
}

/** Phones that come back at once are one change: it is waited for so long without a record, and so long at most (ms). */
const [pause, patience] = [500, 15_000]

/** When no record has come in for a moment. */
function calm({ hear }: Pick<Context, 'hear'>, event: string): Promise<void> {
  return new Promise((resolve) => {
    const end = () => {
      clearTimeout(quiet)
      clearTimeout(late)
      leave()
      resolve()
    }
    let quiet = setTimeout(end, pause).unref()
    const late = setTimeout(end, patience).unref()
    const leave = hear((news) => {
      if (news.event !== event || news.what !== 'records') return
      clearTimeout(quiet)
      quiet = setTimeout(end, pause).unref()
    })
  })
}
