import { useCallback, useEffect, useRef, useState } from 'react'
import type { Row } from '../../../../src/model/scouting/types.ts'
import { keepRows, keptRows } from './keptRows.ts'

/** How long a saved sheet can be taken back before it is handed in (ms): a record that is in can only be corrected. */
const takeBack = 8000

/** Keyed sheets on their way: kept, for some seconds to be taken back, then handed in. */
export function useKeyed(event: string, bring: (rows: readonly Row[]) => Promise<boolean>) {
  const [rows, setRows] = useState<readonly Row[]>(() => keptRows(event))
  const latest = useRef(rows)
  const change = useCallback(
    (next: readonly Row[]) => {
      latest.current = next
      keepRows(event, next)
      setRows(next)
    },
    [event],
  )
  const flush = useCallback(async () => {
    const sent = latest.current
    if (sent.length === 0 || !(await bring(sent))) return
    const ids = new Set(sent.map(({ id }) => id))
    change(latest.current.filter(({ id }) => !ids.has(id)))
  }, [bring, change])

  useEffect(() => {
    if (rows.length === 0) return undefined
    const timer = setTimeout(() => void flush(), takeBack)
    return () => clearTimeout(timer)
  }, [rows, flush])

  const add = useCallback((row: Row) => change([...latest.current, row]), [change])
  const remove = useCallback((id: string) => change(latest.current.filter((row) => row.id !== id)), [change])
  return { rows, add, remove, flush }
}
