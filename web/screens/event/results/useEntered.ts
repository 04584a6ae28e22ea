import { useState } from 'react'
import type { Result } from '../../../../src/model/scouting/types.ts'
import type { ResultEntry, States, StoredMatch, StoredResult } from '../../../../src/store/types.ts'
import { useEventChanges } from '../../../data/events.ts'

/** What brings one result back to where it was. */
interface Back {
  match: string
  /** Revision that the entry made. */
  revision: number
  result: Result | null
  states: States | undefined
}

const statesIn = ({ match }: StoredMatch): States => ({
  red: match.red.map(({ state }) => state),
  blue: match.blue.map(({ state }) => state),
})

/** Results on their way in, and the last of them taken back. It outlives the part of the page that shows it. */
export function useEntered(event: string, now: { matches: readonly StoredMatch[]; results: readonly StoredResult[] }) {
  const { enter } = useEventChanges(event)
  const [undo, setUndo] = useState<Back[] | null>(null)
  /** Which entry it was: each is told of by itself. */
  const [times, setTimes] = useState(0)
  const [trouble, setTrouble] = useState<string | null>(null)
  const storedMatch = (id: string) => now.matches.find(({ match }) => match.id === id)

  /** Throws what the server refuses it for. */
  const send = async (entries: readonly ResultEntry[]) => {
    setTrouble(null)
    const before = entries.map(({ match, states }) => {
      const stored = storedMatch(match)
      const result = now.results.find((each) => each.match === match)?.result ?? null
      return { match, result, states: states && stored ? statesIn(stored) : undefined }
    })
    const applied = await enter.mutateAsync([...entries])
    const revisions = new Map(applied.map(({ match, revision }) => [match, revision]))
    setUndo(before.map((each) => ({ ...each, revision: revisions.get(each.match) ?? 0 })))
    setTimes((before) => before + 1)
  }
  const takeBack = async () => {
    setTrouble(null)
    const entries = (undo ?? []).map(({ match, revision, result, states }): ResultEntry => {
      const matchRevision = storedMatch(match)?.revision ?? 0
      return { match, base: revision, matchRevision, result, ...(states && { states }) }
    })
    try {
      await enter.mutateAsync(entries)
      setUndo(null)
    } catch (error) {
      setTrouble((error as Error).message)
    }
  }
  return { send, takeBack, times, trouble, busy: enter.isPending, entered: undo?.map(({ match }) => match) ?? null }
}

export type Entered = ReturnType<typeof useEntered>
