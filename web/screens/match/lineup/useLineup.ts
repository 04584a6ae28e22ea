import { useEffect, useRef, useState } from 'react'
import type { PlayedLineup } from '../../../../src/model/match/lineup/player.ts'
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

/** So many matches of each line-up are asked for together, of all the same, so that equal ones have equal marks. */
const together = 500
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
): Promise<PlayedLineup[]> {
  const played = lineups.map(() => ({ values: new Float64Array(to - from), mark: 0 }))
  for (let first = 0; first < lineups.length; first += lineupsTogether) {
    const some = lineups.slice(first, first + lineupsTogether)
    for (let begin = from; begin < to; begin += together) {
      const end = Math.min(to, begin + together)
      const found = await askLive('lineup', 'lineupMatches', { request, lineups: some, from: begin, to: end })
      for (const [k, part] of found.entries()) {
        const own = played[first + k]!
        own.values.set(part.values, begin - from)
        own.mark += part.mark
      }
      progress(some.length * (end - begin))
    }
  }
  return played
}
