import { useEffect, useRef, useState } from 'react'
import { type LineupSearch, matchesOf, searchLineups } from '../../../../src/model/match/lineup/search.ts'
import type { Lineup, LineupReport, LineupRequest } from '../../../../src/model/match/lineup/types.ts'
import { askLive, endLive } from '../../../worker/client.ts'

export interface Found {
  request: LineupRequest
  report: LineupReport
  /** Line-ups that were still in the running; 2 at the end. */
  left: number
}

export interface Search {
  state: 'idle' | 'preparing' | 'running' | 'stopped' | 'done' | 'failed'
  done: number
  total: number
  /** Of the last round that was finished. */
  found: Found | null
  error: Error | null
}

/** So many matches are asked for together: about half a second's work. */
const together = 4000
/** Robots in new roles are worked out first, so that few line-ups are asked for together. */
const lineupsTogether = 8

/** The best line-up, looked for in a worker of its own: it shows how far it is, and a stop keeps the last round. */
export function useLineup() {
  const [search, setSearch] = useState<Search>({ state: 'idle', done: 0, total: 0, found: null, error: null })
  const run = useRef(0)
  useEffect(() => () => endLive('lineup'), [])

  const start = async (request: LineupRequest) => {
    const own = ++run.current
    endLive('lineup')
    const tell = (next: Partial<Search>) => {
      if (run.current === own) setSearch((before) => ({ ...before, ...next }))
    }
    tell({ state: 'preparing', done: 0, total: 0, error: null })
    try {
      const lineups = await askLive('lineup', 'lineupCandidates', { request })
      let done = 0
      tell({ state: 'running', total: matchesOf(lineups.length) })
      const play: LineupSearch['play'] = (some, from, to) =>
        playIn(request, { lineups: some, from, to }, (count) => {
          done += count
          tell({ done })
        })
      const after: LineupSearch['after'] = (report, left) => tell({ found: { request, report, left } })
      const report = await searchLineups(request, { lineups, play, after })
      tell({ state: 'done', found: { request, report, left: Math.min(2, lineups.length) } })
    } catch (error) {
      tell({ state: 'failed', error: error as Error })
    }
  }
  const stop = () => {
    run.current++
    endLive('lineup')
    setSearch((before) => ({ ...before, state: 'stopped' }))
  }
  return { search, start, stop }
}

async function playIn(
  request: LineupRequest,
  { lineups, from, to }: { lineups: readonly Lineup[]; from: number; to: number },
  progress: (count: number) => void,
): Promise<Float64Array[]> {
  const values = lineups.map(() => new Float64Array(to - from))
  for (let first = 0; first < lineups.length; first += lineupsTogether) {
    const some = lineups.slice(first, first + lineupsTogether)
    const step = Math.max(250, Math.floor(together / some.length))
    for (let begin = from; begin < to; begin += step) {
      const end = Math.min(to, begin + step)
      const found = await askLive('lineup', 'lineupMatches', { request, lineups: some, from: begin, to: end })
      for (const [k, part] of found.entries()) values[first + k]!.set(part, begin - from)
      progress(some.length * (end - begin))
    }
  }
  return values
}
