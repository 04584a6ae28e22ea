import { useCallback, useEffect, useRef, useState } from 'react'
import type { TimedTrial, TimingRecord } from '../../../../src/model/documents/timing.ts'
import { getDocument, listDocuments, saveDocument, Unreachable } from '../../../data/api.ts'
import { joined, type Kept, readKept, unsent, writeKept } from './keep.ts'

export type Sending = { state: 'idle' | 'sending' | 'silent' } | { state: 'refused'; why: string }

/** After a change the phone waits this long (ms) before it sends: a stop is often taken back at once. */
const pause = 1500
/** Waits between tries while the server is silent (ms): ever longer, at most this. */
const longestWait = 30_000

const newest = async (id: string): Promise<{ revision: number; trials: TimedTrial[] } | null> => {
  const listed = await listDocuments('timing', true)
  if (!listed.some((entry) => entry.id === id)) return null
  const { revision, body } = await getDocument('timing', id)
  return { revision, trials: (body as TimingRecord).trials }
}

/**
 * The times of one part: on this phone at once, on the server as soon as it answers. What others took of the same part is
 * joined in.
 */
export function useTimes(of: Omit<TimingRecord, 'format' | 'trials'>) {
  const { id } = of
  const [kept, setKept] = useState<Kept>(() => readKept(id))
  const [sending, setSending] = useState<Sending>({ state: 'idle' })
  const [remembered, setRemembered] = useState(true)
  const latest = useRef({ kept, of })
  const busy = useRef(false)
  const shown = useRef(true)
  const wait = useRef(2000)

  const put = useCallback(
    (next: Kept) => {
      latest.current.kept = next
      setRemembered(writeKept(id, next))
      setKept(next)
    },
    [id],
  )
  useEffect(() => {
    latest.current.of = of
  })

  const send = useCallback(async () => {
    if (busy.current) return
    busy.current = true
    setSending({ state: 'sending' })
    try {
      // Again where somebody saved in between, or a time was taken while the last ones were on their way.
      for (let round = 0; round < 6 && shown.current; round++) {
        const { kept: now, of: record } = latest.current
        if (unsent(now) === 0) break
        const body: TimingRecord = { format: 1, ...record, trials: now.trials }
        const outcome = await saveDocument({
          kind: 'timing',
          id: record.id,
          name: record.name,
          body,
          base: now.server?.revision ?? null,
        })
        const held = 'saved' in outcome ? outcome.saved : outcome.conflict.current
        const server = { revision: held.revision, trials: (held.body as TimingRecord).trials }
        const here = latest.current.kept
        // The answer to what was just sent has nothing new: what was taken since then stays.
        put('saved' in outcome ? { trials: here.trials, server } : joined(here, server))
      }
      wait.current = 2000
      if (shown.current) setSending({ state: 'idle' })
    } catch (error) {
      if (shown.current)
        setSending(
          error instanceof Unreachable ? { state: 'silent' } : { state: 'refused', why: (error as Error).message },
        )
    } finally {
      busy.current = false
    }
  }, [put])

  // What others, or this phone before, have taken of the same part.
  useEffect(() => {
    shown.current = true
    const load = async () => {
      try {
        const found = await newest(id)
        if (found && shown.current) put(joined(latest.current.kept, found))
      } catch {
        // The next try to send says what is wrong; times are taken all the same.
      }
    }
    void load()
    return () => {
      shown.current = false
    }
  }, [id, put])

  const waiting = unsent(kept)
  useEffect(() => {
    if (waiting === 0) return
    const again = sending.state === 'silent'
    if (sending.state === 'refused' || sending.state === 'sending') return
    const timer = setTimeout(() => void send(), again ? wait.current : pause)
    if (again) wait.current = Math.min(longestWait, wait.current * 2)
    return () => clearTimeout(timer)
  }, [waiting, sending, send])
  useEffect(() => {
    const now = () => {
      if (document.visibilityState === 'visible' && unsent(latest.current.kept) > 0) void send()
    }
    addEventListener('online', now)
    document.addEventListener('visibilitychange', now)
    return () => {
      removeEventListener('online', now)
      document.removeEventListener('visibilitychange', now)
    }
  }, [send])

  const change = useCallback(
    (edit: (trials: TimedTrial[]) => TimedTrial[]) => {
      setSending((before) => (before.state === 'refused' ? { state: 'idle' } : before))
      const now = latest.current.kept
      put({ ...now, trials: edit(now.trials) })
    },
    [put],
  )
  return { trials: kept.trials, waiting, sending, remembered, change, send }
}
