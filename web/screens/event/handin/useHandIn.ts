import { useCallback, useEffect, useRef, useState } from 'react'
import type { Row } from '../../../../src/model/scouting/types.ts'
import { thisDevice } from '../../../data/device.ts'
import { handIn } from '../../../data/records.ts'

/** waiting: read here, not acknowledged by the server. new and again: held. apart: kept apart until a lead decides. */
export type State = 'waiting' | 'new' | 'again' | 'apart' | 'refused'

export interface Entry {
  row: Row
  state: State
  why?: string
}

/** What was brought in on this page, newest first, and what became of it. */
export function useHandIn() {
  const [entries, setEntries] = useState<readonly Entry[]>([])
  const [error, setError] = useState<Error | null>(null)
  const [busy, setBusy] = useState(false)
  const latest = useRef(entries)

  const change = useCallback((next: readonly Entry[]) => {
    latest.current = next
    setEntries(next)
  }, [])

  const send = useCallback(
    async (rows: readonly Row[]): Promise<boolean> => {
      setBusy(true)
      setError(null)
      try {
        const answers = await handIn(thisDevice(), rows)
        const told = new Map(rows.map((row, index) => [row.id, answers[index]!]))
        change(
          latest.current.map((entry) => {
            const answer = entry.state === 'waiting' ? told.get(entry.row.id) : undefined
            if (!answer) return entry
            if (answer.outcome === 'held') return { row: entry.row, state: answer.again ? 'again' : 'new' }
            return { row: entry.row, state: answer.outcome === 'refused' ? 'refused' : 'apart', why: answer.why }
          }),
        )
        return true
      } catch (trouble) {
        setError(trouble as Error)
        return false
      } finally {
        setBusy(false)
      }
    },
    [change],
  )

  /** Takes rows in and hands them on. Whether the server answered; where it did not, they stay here as waiting. */
  const bring = useCallback(
    (rows: readonly Row[]): Promise<boolean> => {
      const ids = new Set(rows.map(({ id }) => id))
      const others = latest.current.filter(({ row }) => !ids.has(row.id))
      change([...rows.map((row): Entry => ({ row, state: 'waiting' })), ...others])
      return send(rows)
    },
    [change, send],
  )
  const again = useCallback(
    () => send(latest.current.filter(({ state }) => state === 'waiting').map(({ row }) => row)),
    [send],
  )
  useLeaving(entries.some(({ state }) => state === 'waiting'))
  return { entries, error, busy, bring, again }
}

/** What waits is nowhere else for certain: the browser asks before it closes the page. */
function useLeaving(waits: boolean) {
  useEffect(() => {
    if (!waits) return undefined
    const ask = (event: BeforeUnloadEvent) => event.preventDefault()
    addEventListener('beforeunload', ask)
    return () => removeEventListener('beforeunload', ask)
  }, [waits])
}
