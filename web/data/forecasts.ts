import { useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect, useRef, useState } from 'react'
import type { ForecastState, Judgement } from '../../src/model/scouting/record/index.ts'
import { client, said } from './api.ts'

export interface SaidBefore {
  id: string
  madeAt: string
  version: number
  win: number
  tie: number
  loss: number
}

interface Score {
  mean: number
  interval80: [number, number]
}

/** A match that was forecast, by the forecast that counts. */
export interface ForecastRow extends SaidBefore {
  match: string
  state: ForecastState
  scores: { red: Score; blue: Score }
  result: { red: number; blue: number; since: string } | null
  /** Oldest first. */
  all: SaidBefore[]
}

export interface ForecastRecord {
  played: number
  judgement: Judgement | null
  matches: ForecastRow[]
}

export const useForecastRecord = (event: string) =>
  useQuery({
    queryKey: ['event', event, 'forecasts'],
    queryFn: () => said(client.estimates.record.query({ event })) as unknown as Promise<ForecastRecord>,
    placeholderData: (before) => before,
  })

export type Making =
  | { at: 'rest' }
  | { at: 'work'; done: number; all: number }
  | { at: 'end'; done: number; stopped: boolean }
  | { at: 'trouble'; error: unknown }

/** So many at a time: progress is told between, and a stop takes effect. */
const atOnce = 2

/** Asks the server for the day's forecasts until none is left, or nobody wants more. */
export function useMaking(event: string) {
  const queries = useQueryClient()
  const [state, setState] = useState<Making>({ at: 'rest' })
  const wanted = useRef(false)
  useEffect(
    () => () => {
      wanted.current = false
    },
    [],
  )
  const start = async () => {
    wanted.current = true
    setState({ at: 'work', done: 0, all: 0 })
    let done = 0
    try {
      for (let left = 1; left > 0 && wanted.current; ) {
        const answer = await said(client.estimates.makeForecasts.mutate({ event, most: atOnce }))
        done += answer.made.length
        // Something began in between: what can not be made any more is not waited for.
        left = answer.made.length > 0 ? answer.left : 0
        if (wanted.current && left > 0) setState({ at: 'work', done, all: done + left })
        void queries.invalidateQueries({ queryKey: ['event', event, 'forecasts'] })
      }
      setState({ at: 'end', done, stopped: !wanted.current })
    } catch (error) {
      setState({ at: 'trouble', error })
    }
  }
  const stop = () => {
    wanted.current = false
  }
  return { state, start: () => void start(), stop }
}
