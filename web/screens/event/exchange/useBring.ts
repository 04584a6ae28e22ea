import { useQueryClient } from '@tanstack/react-query'
import { useState } from 'react'
import { type Brought, bringFile, FileRefused } from '../../../data/exchange.ts'

export type Bringing =
  | { state: 'none' }
  /** applying: the file is being taken in; otherwise it is looked at. */
  | { state: 'busy'; file: File; applying: boolean }
  | { state: 'looked' | 'done'; file: File; report: Brought }
  | { state: 'refused'; file: File; refused: FileRefused; applying: boolean }

/** A file on its way in: looked at first, taken in when somebody says so. */
export function useBring() {
  const queries = useQueryClient()
  const [bringing, setBringing] = useState<Bringing>({ state: 'none' })
  const send = async (file: File, applying: boolean) => {
    setBringing({ state: 'busy', file, applying })
    try {
      const report = await bringFile(file, !applying)
      setBringing({ state: applying ? 'done' : 'looked', file, report })
      if (applying) await queries.invalidateQueries()
    } catch (error) {
      const refused = error instanceof FileRefused ? error : new FileRefused((error as Error).message, [], 0)
      setBringing({ state: 'refused', file, refused, applying })
    }
  }
  return {
    bringing,
    look: (file: File) => send(file, false),
    apply: (file: File) => send(file, true),
    leave: () => setBringing({ state: 'none' }),
  }
}
