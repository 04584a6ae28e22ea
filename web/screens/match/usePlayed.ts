import { preciseEnough } from '../../../src/model/match/precision.ts'
import { askLive } from '../../worker/client.ts'
import type { Questions } from '../../worker/protocol.ts'
import { type Game, type Playing, type Until, usePlaying } from '../../worker/usePlaying.ts'

export type MatchAsk = Omit<Questions['match']['ask'], 'from' | 'to' | 'soFar' | 'precision'>
type Answer = Questions['match']['answer']

export interface Played extends Playing<MatchAsk, Answer> {
  /** Our lead in each match so far. */
  leads: readonly number[]
}

/** The leads of all matches, not only of the last that were asked for. */
type Kept = Answer & { all: readonly number[] }

const matches: Game<MatchAsk, Kept> = {
  play: async (ask, { from, to, before, precision }, progress) => {
    const part = { from, to, precision, soFar: before?.soFar ?? null }
    const answer = await askLive('match', 'match', { ...ask, ...part }, progress)
    return { ...answer, all: [...(before?.all ?? []), ...answer.leads] }
  },
  played: ({ report }) => report.replicates,
  precise: ({ soFar }, precision) => preciseEnough(soFar, precision ?? undefined),
}

const none: readonly number[] = []

/** Plays the matches of a set-up, as many as it takes: see `usePlaying`. */
export function usePlayed(ask: MatchAsk | null, until: Until): Played {
  const playing = usePlaying(ask, until, matches)
  return { ...playing, leads: playing.answer?.all ?? none }
}
