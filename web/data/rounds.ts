import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useEffect } from 'react'
import type { QuickLegName } from '../../src/model/documents/quickSheet.ts'
import type { Guess } from '../../src/model/sheet/index.ts'
import {
  arriveIn,
  bringRounds,
  closeRound,
  getReach,
  getRound,
  giveGuess,
  listRounds,
  openRound,
  removeRound,
} from './api.ts'
import { closingKey, keepClosingKey, madeKey, thisDevice } from './device.ts'

const key = (code: string) => ['round', code] as const

export const useRounds = (sheet: string) =>
  useQuery({ queryKey: ['rounds', sheet], queryFn: () => listRounds(sheet), refetchInterval: 15_000 })

/** A round, asked for again every few seconds while it is open. */
export const useRound = (code: string, every: number) =>
  useQuery({
    queryKey: key(code),
    queryFn: () => getRound(code),
    refetchInterval: ({ state }) => (state.data?.closedAt ? false : every),
  })

/** Says once that this phone is in the round; a failure costs nothing but the count of those who have not guessed yet. */
export function useArrival(code: string, open: boolean): void {
  useEffect(() => {
    if (open) void arriveIn(code, thisDevice()).catch(() => null)
  }, [code, open])
}

export const useReach = () => useQuery({ queryKey: ['reach'], queryFn: getReach, staleTime: 60_000 })

/** Opening, guessing and closing; what is on the screen follows. */
export function useRoundChanges(sheet?: string) {
  const queries = useQueryClient()
  const follow = (code: string) =>
    Promise.all([
      queries.invalidateQueries({ queryKey: key(code) }),
      ...(sheet === undefined ? [] : [queries.invalidateQueries({ queryKey: ['rounds', sheet] })]),
    ])
  const open = useMutation({
    mutationFn: async (subject: { sheet: string; way: string; leg: QuickLegName }) => {
      const closingKey = madeKey()
      const round = await openRound({ ...subject, closingKey })
      keepClosingKey(round.code, closingKey)
      return round
    },
    onSuccess: ({ code }) => follow(code),
  })
  const give = useMutation({
    mutationFn: (of: { code: string; device: string; guess: Guess }) => giveGuess(of.code, of.device, of.guess),
    onSuccess: (_, { code }) => follow(code),
  })
  const close = useMutation({
    mutationFn: ({ code, anyway = false }: { code: string; anyway?: boolean }) =>
      closeRound(code, { closingKey: closingKey(code) ?? undefined, anyway }),
    onSuccess: ({ code }) => follow(code),
  })
  const remove = useMutation({
    mutationFn: ({ code, undo = false }: { code: string; undo?: boolean }) => removeRound(code, undo),
    // A removed round is asked for no more: the answer would be that there is none.
    onSuccess: (_, { code, undo }) =>
      undo ? follow(code) : queries.invalidateQueries({ queryKey: ['rounds', sheet] }).then(() => undefined),
  })
  const bring = useMutation({
    mutationFn: (file: unknown) => bringRounds(sheet ?? '', file),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['rounds', sheet] }),
  })
  return { open, give, close, remove, bring }
}
