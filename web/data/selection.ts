import { useQuery, useQueryClient } from '@tanstack/react-query'
import { type Dispatch, type SetStateAction, useCallback, useEffect, useMemo, useRef, useState } from 'react'
import {
  type KeptLine,
  type PickLine,
  type Protocol,
  protocolOf,
  refusedLine,
  type Topic,
  topicOf,
  type Written,
} from '../../src/model/picks/protocol/index.ts'
import { client, codeOf, said, Unreachable } from './api.ts'
import { addUnsent, dropUnsent, keepLines, keptLines, moveUnsent, type Unsent, unsentLines } from './picksDatabase.ts'
import { madeUuid } from './uuid.ts'

const selectionKey = (event: string) => ['event', event, 'selection'] as const

/** What the server keeps; where it can not be reached, what it said last. */
async function linesOf(event: string): Promise<{ lines: KeptLine[]; kept: boolean }> {
  try {
    const { lines } = (await said(client.picks.lines.query({ event }))) as { lines: KeptLine[] }
    await keepLines(event, lines)
    return { lines, kept: false }
  } catch (error) {
    const before = error instanceof Unreachable ? await keptLines(event) : null
    if (before) return { lines: before, kept: true }
    throw error
  }
}

export const linesQuery = (event: string) => ({
  queryKey: selectionKey(event),
  queryFn: () => linesOf(event),
  networkMode: 'always' as const,
  // What was asked for before the page was drawn is not asked for again once it stands.
  staleTime: 2000,
})

/** Somebody else wrote meanwhile: ours were not taken, and stay here until it is decided what becomes of them. */
export interface Clash {
  topic: Topic
  lines: Written[]
  /** The server's own sentence. */
  message: string
}

export interface SelectionLog {
  /** What is so, with lines of ours that are still on their way. */
  protocol: Protocol
  /** All lines that the server keeps. */
  lines: readonly KeptLine[]
  /** Lines on this device alone. */
  waiting: number
  clash: Clash | null
  /** Writes a line: it counts here at once, and is sent. */
  write(line: PickLine): void
  /** Writes the clashing lines behind what others wrote, as far as they still can follow; or forgets them. */
  settle(how: 'after' | 'forget'): void
}

/** After so long without an answer it is tried again (ms). */
const again = 4000

/** The log of an event's selection. `data` null: not loaded yet. */
export function useSelection(event: string): {
  log: SelectionLog | null
  error: Error | null
  refetch(): void
} {
  const queries = useQueryClient()
  const query = useQuery(linesQuery(event))
  const [unsent, setUnsent] = useState<Unsent[] | null>(null)
  const [clash, setClash] = useState<Clash | null>(null)
  const sending = useRef(false)

  useEffect(() => {
    let gone = false
    void unsentLines(event).then((rows) => {
      if (!gone) setUnsent((before) => before ?? rows)
    })
    return () => {
      gone = true
    }
  }, [event])

  const forget = useCallback(
    async (lines: readonly Written[]) => {
      const ids = new Set(lines.map(({ id }) => id))
      setUnsent((before) => (before ?? []).filter(({ written }) => !ids.has(written.id)))
      await dropUnsent(event, ids)
    },
    [event],
  )

  const lines = query.data?.lines
  const { refetch } = query
  const send = useCallback(async () => {
    const first = unsent?.[0]
    if (!first || sending.current || clash) return
    sending.current = true
    const { topic, after } = first
    const some = unsent.filter((each) => each.topic === topic).map(({ written }) => written)
    try {
      const answer = await post(event, { topic, after, lines: some })
      queries.setQueryData(selectionKey(event), { lines: answer, kept: false })
      void keepLines(event, answer)
      await forget(some)
    } catch (error) {
      // Whatever else is the matter passes: it is tried again.
      if (!refusals.includes(codeOf(error) ?? '')) return
      await refetch()
      setClash({ topic, lines: some, message: (error as Error).message })
    } finally {
      sending.current = false
    }
  }, [unsent, clash, event, queries, forget, refetch])

  useEffect(() => {
    void send()
    const timer = setInterval(() => void send(), again)
    return () => clearInterval(timer)
  }, [send])

  const log = useMemo(
    () => (lines && unsent ? logOf({ event, lines, unsent, clash }, { setUnsent, setClash, forget }) : null),
    [event, lines, unsent, clash, forget],
  )
  return { log, error: query.data ? null : query.error, refetch: () => void refetch() }
}

/** Answers after which trying again would change nothing. */
const refusals = ['conflict', 'malformed', 'forbidden', 'notFound']

function logOf(
  { event, lines, unsent, clash }: { event: string; lines: KeptLine[]; unsent: Unsent[]; clash: Clash | null },
  change: {
    setUnsent: Dispatch<SetStateAction<Unsent[] | null>>
    setClash(next: null): void
    forget(lines: readonly Written[]): Promise<void>
  },
): SelectionLog {
  const apart = new Set(clash?.lines.map(({ id }) => id))
  const mine = unsent.map(({ written }) => written).filter(({ id }) => !apart.has(id))
  const protocol = protocolOf([...lines, ...mine])
  return {
    ...{ protocol, lines, clash, waiting: unsent.length },
    write: (line) => {
      const topic = topicOf(line)
      const row: Unsent = { event, topic, after: protocol.newest[topic], written: { id: madeUuid(), line } }
      change.setUnsent((before) => [...(before ?? []), row])
      void addUnsent([row])
    },
    settle: (how) => {
      if (!clash) return
      // One by one: what can not follow any more is left out, the others may.
      const good: Written[] = []
      if (how === 'after')
        for (const line of clash.lines) if (!refusedLine([...lines, ...good], [line])) good.push(line)
      const first = good[0]
      const after = protocolOf(lines).newest[clash.topic]
      if (first) {
        change.setUnsent((before) =>
          (before ?? []).map((row) => (row.written.id === first.id ? { ...row, after } : row)),
        )
        void moveUnsent(event, first.id, after)
      }
      void change.forget(clash.lines.filter(({ id }) => !good.some((line) => line.id === id)))
      change.setClash(null)
    },
  }
}

async function post(
  event: string,
  of: { topic: Topic; after: string | null; lines: readonly Written[] },
): Promise<KeptLine[]> {
  const { topic, after } = of
  const request = { event, after, lines: [...of.lines] as never }
  const answer = await said(
    topic === 'selection' ? client.picks.write.mutate(request) : client.picks.note.mutate(request),
  )
  return (answer as { lines: KeptLine[] }).lines
}
