import { liveQuery } from 'dexie'
import { useCallback, useEffect, useState } from 'react'
import { feel } from '../parts/choices.ts'
import { useStanding } from '../parts/means.tsx'
import { rawElapsed } from './clock.ts'
import { addTap, dropLast, type Read, readDraft, Writer } from './desk.ts'
import type { Draft, Tap } from './draft.ts'
import type { Press } from './form.ts'
import { steadyNow } from './steady.ts'

/** A draft on the screen: what is pressed shows at once and is written at once. */
export interface Desk extends Read {
  /** Whether something pressed is still on its way to the phone's disk, or was refused there. */
  keeping: boolean
  /** Whether something pressed could not be written: it is tried again with the next press. */
  notKept: boolean
  change(patch: Partial<Draft> | ((draft: Draft) => Partial<Draft>)): void
  say(said: Partial<Draft['said']>): void
  press(press: Press, period?: Tap['period']): void
  /** Takes the last tap back and returns it. */
  undo(): Tap | null
  /** Resolves to whether all that is on the screen is on the phone's disk, once more tried if it was not. */
  kept(): Promise<boolean>
}

/** undefined: it is being read; null: there is no such draft. */
export function useDraft(id: string): Desk | null | undefined {
  const { database } = useStanding()
  const [shown, setShown] = useState<{ read: Read | null; keeping: boolean; notKept: boolean }>()
  const [writer] = useState(() => new Writer(database))

  useEffect(() => {
    const show = () => setShown({ read: writer.now, keeping: writer.waits, notKept: writer.refused })
    writer.shown = show
    // What another tab writes into the same draft is seen here; what waits here is not overwritten by what is older.
    const asked = liveQuery(() => readDraft(database, id)).subscribe({
      next: (found) => {
        if (writer.waits) return
        writer.now = found
        show()
      },
      error: (error) => console.error(error),
    })
    return () => asked.unsubscribe()
  }, [database, id, writer])

  const change = useCallback<Desk['change']>(
    (patch) => {
      const { now } = writer
      if (!now) return
      const changes = typeof patch === 'function' ? patch(now.draft) : patch
      writer.write({ ...now, draft: { ...now.draft, ...changes } }, () => database.drafts.update(id, changes))
    },
    [database, id, writer],
  )

  const press = useCallback<Desk['press']>(
    (pressed, period) => {
      const { now } = writer
      if (!now) return
      const elapsed = Math.round(rawElapsed(now.draft.clock, steadyNow()) * 100) / 100
      const tap: Tap = { ...pressed, elapsed, ...(period ? { period } : {}) }
      feel('tap')
      writer.write({ ...now, taps: [...now.taps, tap] }, () => addTap(database, id, tap))
    },
    [database, id, writer],
  )

  const undo = useCallback(() => {
    const { now } = writer
    const last = now?.taps.at(-1)
    if (!now || !last) return null
    feel('undo')
    writer.write({ ...now, taps: now.taps.slice(0, -1) }, () => dropLast(database, id))
    return last
  }, [database, id, writer])

  const say = useCallback<Desk['say']>((said) => change((draft) => ({ said: { ...draft.said, ...said } })), [change])
  const kept = useCallback(() => writer.settle(), [writer])

  if (!shown) return undefined
  const { read, keeping, notKept } = shown
  return read && { ...read, keeping, notKept, change, say, press, undo, kept }
}
