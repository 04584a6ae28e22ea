import { useMemo } from 'react'
import type { CompareRequest } from '../../../../src/model/compare/types.ts'
import type { StatedField } from '../../../../src/model/documents/records.ts'
import { askLive } from '../../../worker/client.ts'
import type { Questions } from '../../../worker/protocol.ts'
import { type Game, type Playing, usePlaying } from '../../../worker/usePlaying.ts'

type Ask = Omit<Questions['stated']['ask'], 'from' | 'to' | 'soFar'>
type Answer = Questions['stated']['answer']

export type FieldPlayed = Playing<Ask, Answer>

const matches: Game<Ask, Answer> = {
  play: (ask, { from, to, before }, progress) =>
    askLive('match', 'stated', { ...ask, from, to, soFar: before?.soFar ?? null }, progress),
  played: ({ report }) => report.replicates,
  // Options are told apart by their differences, which a chance's precision says nothing about.
  precise: () => false,
}

/** Whole matches of every option with a stated field; none where `field` is null. */
export function useFieldPlayed(request: CompareRequest, field: StatedField | null, seed: number): FieldPlayed {
  const ask = useMemo((): Ask | null => {
    if (!field) return null
    const { partners, opponents, level } = field
    return { game: request.game, options: request.options, partners, opponents, level, seed }
  }, [request, field, seed])
  return usePlaying(ask, { replicates: field?.replicates ?? 0, precision: null }, matches)
}
