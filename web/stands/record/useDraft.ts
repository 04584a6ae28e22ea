import { useCallback, useEffect, useRef, useState } from 'react'
import type { Game } from '../../../src/model/documents/types.ts'
import { tapsOf } from '../data/outbox.ts'
import { feel } from '../parts/choices.ts'
import { useStanding } from '../parts/means.tsx'
import { rawElapsed } from './clock.ts'
import type { Draft, Tap } from './draft.ts'
import type { Press } from './form.ts'

/** A draft on the screen: what is pressed shows at once and is written at once. */
export interface Desk {
  draft: Draft
  taps: Tap[]
  game: Game
  /** Whether the last thing pressed could not be written. */
  notKept: boolean
  change(patch: Partial<Draft> | ((draft: Draft) => Partial<Draft>)): void
  say(said: Partial<Draft['said']>): void
  press(press: Press, period?: Tap['period']): void
  /** Takes the last tap back and returns it. */
  undo(): Tap | null
}

interface Loaded {
  draft: Draft
  taps: Tap[]
  game: Game
}

/** undefined: it is being read; null: there is no such draft. */
export function useDraft(id: string): Desk | null | undefined {
  const { database } = useStanding()
  const [loaded, setLoaded] = useState<Loaded | null>()
  const [notKept, setNotKept] = useState(false)
  const now = useRef<Loaded | null>(null)

  useEffect(() => {
    let here = true
    const read = async () => {
      const draft = await database.drafts.get(id)
      const game = draft && (await database.games.get([draft.game.id, draft.game.revision]))
      const found = draft && game ? { draft, game: game.body, taps: await tapsOf(database, id) } : null
      if (!here) return
      now.current = found
      setLoaded(found)
    }
    void read()
    return () => {
      here = false
    }
  }, [database, id])

  const become = useCallback((next: Loaded, written: Promise<unknown>) => {
    now.current = next
    setLoaded(next)
    written.then(
      () => setNotKept(false),
      () => setNotKept(true),
    )
  }, [])

  const change = useCallback<Desk['change']>(
    (patch) => {
      const { current } = now
      if (!current) return
      const draft = { ...current.draft, ...(typeof patch === 'function' ? patch(current.draft) : patch) }
      become({ ...current, draft }, database.drafts.put(draft))
    },
    [database, become],
  )

  const press = useCallback<Desk['press']>(
    (pressed, period) => {
      const { current } = now
      if (!current) return
      const elapsed = Math.round(rawElapsed(current.draft.clock, Date.now()) * 100) / 100
      const tap: Tap = { ...pressed, elapsed, ...(period ? { period } : {}) }
      const order = current.taps.length
      feel('tap')
      become({ ...current, taps: [...current.taps, tap] }, database.taps.put({ ...tap, draft: id, order }))
    },
    [database, id, become],
  )

  const undo = useCallback(() => {
    const { current } = now
    const last = current?.taps.at(-1)
    if (!current || !last) return null
    const order = current.taps.length - 1
    feel('undo')
    become({ ...current, taps: current.taps.slice(0, -1) }, database.taps.delete([id, order]))
    return last
  }, [database, id, become])

  const say = useCallback<Desk['say']>((said) => change((draft) => ({ said: { ...draft.said, ...said } })), [change])

  return loaded && { ...loaded, notKept, change, say, press, undo }
}
