import { askLive } from '../../worker/client.ts'
import type { Questions } from '../../worker/protocol.ts'
import { type Game, type Playing, usePlaying } from '../../worker/usePlaying.ts'

export type MatchAsk = Omit<Questions['match']['ask'], 'from' | 'to' | 'soFar'>
type Answer = Questions['match']['answer']

export interface Played extends Playing<MatchAsk, Answer> {
  /** Our lead in each match so far. */
  leads: readonly number[]
}

/** The leads of all matches, not only of the last that were asked for. */
type Kept = Answer & { all: readonly number[] }

const matches: Game<MatchAsk, Kept> = {
  play: async (ask, { from, to, before }, progress) => {
    const answer = await askLive('match', 'match', { ...ask, from, to, soFar: before?.soFar ?? null }, progress)
    return { ...answer, all: [...(before?.all ?? []), ...answer.leads] }
  },
  played: ({ report }) => report.replicates,
}

const none: readonly number[] = []

/** Plays the matches of a set-up, as many as asked for: see `usePlaying`. */
export function usePlayed(ask: MatchAsk | null, replicates: number): Played {
  const playing = usePlaying(ask, replicates, matches)
  return { ...playing, leads: playing.answer?.all ?? none }
}
