import type { EventRecord, Match, Result, ResultSide, Side } from '../../../src/model/scouting/types.ts'

/** 'A B C' as a side, each in its place. `A*`: a surrogate, `A-`: absent, `A!`: disqualified. */
export const side = (teams: string): Side =>
  teams.split(' ').map((mark) => ({
    team: mark.replace(/[*!-]$/, ''),
    counts: !mark.endsWith('*'),
    state: mark.endsWith('-') ? 'absent' : mark.endsWith('!') ? 'disqualified' : 'played',
  })) as Side

/** Qualification `number`, with further fields. */
export const match = (number: number, red: string, blue: string, more: Partial<Match> = {}): Match => ({
  id: `q${number}`,
  phase: 'qualification',
  number,
  play: 1,
  red: side(red),
  blue: side(blue),
  ...more,
})

/** A result by totals, with what else the sides count. */
export const result = (
  id: string,
  [red, blue]: [number, number],
  more: {
    red?: Partial<ResultSide['points']>
    blue?: Partial<ResultSide['points']>
    bonuses?: [string[], string[]]
  } = {},
): Result => ({
  match: id,
  red: { points: { total: red, ...more.red }, bonuses: more.bonuses?.[0] ?? [] },
  blue: { points: { total: blue, ...more.blue }, bonuses: more.bonuses?.[1] ?? [] },
})

/** An event with these teams. */
export const eventOf = (teams: string, more: Partial<EventRecord> = {}): EventRecord => ({
  format: 1,
  id: 'harbour-days',
  name: 'Harbour days',
  game: 'breakwater',
  teams: teams.split(' ').map((team) => ({ team })),
  ...more,
})
