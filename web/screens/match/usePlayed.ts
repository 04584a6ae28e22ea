import { askLive } from '../../worker/client.ts'
import type { Questions } from '../../worker/protocol.ts'
import { type Game, type Playing, usePlaying } from '../../worker/usePlaying.ts'

export type MatchAsk = Omit<Questions['match']['ask'], 'from' | 'to' | 'soFar'>
type Answer = Questions['match']['answer']

export type Played = Playing<MatchAsk, Answer>

const matches: Game<MatchAsk, Answer> = {
  play: (ask, { from, to, before }, progress) =>
    askLive('match', 'match', { ...ask, from, to, soFar: before?.soFar ?? null }, progress),
  played: ({ report }) => report.replicates,
}

/** Plays the matches of a set-up, as many as asked for: see `usePlaying`. */
export const usePlayed = (ask: MatchAsk | null, replicates: number): Played => usePlaying(ask, replicates, matches)
