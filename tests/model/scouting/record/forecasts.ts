import { createHash } from 'node:crypto'
import type { KeptForecast, StandingResult } from '../../../../src/model/scouting/record/index.ts'
import type { Match, Side } from '../../../../src/model/scouting/types.ts'

export const idOf = (name: string): string => createHash('sha256').update(name).digest('hex')

const side = (first: number): Side =>
  [0, 1, 2].map((k) => ({ team: String(first + k), counts: true, state: 'expected' })) as unknown as Side

export const match = (number: number, of: Partial<Match> = {}): Match => ({
  id: `q${number}`,
  phase: 'qualification',
  number,
  play: 1,
  red: side(10),
  blue: side(20),
  ...of,
})

export const moment = (minute: number): string => new Date(Date.UTC(2031, 2, 15, 10, minute)).toISOString()

const flat = { first: 40, counts: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1] }

/** A forecast of even scores from 40 to 49, unless told otherwise. */
export function forecast(of: string, minute: number, body: Partial<KeptForecast['body']> = {}): KeptForecast {
  return {
    id: idOf(`${of} ${minute}`),
    match: of,
    madeAt: moment(minute),
    from: idOf('records'),
    version: 1,
    body: {
      teams: { red: ['10', '11', '12'], blue: ['20', '21', '22'] },
      records: 12,
      neverSeen: [],
      replicates: 10,
      seed: 1,
      win: 0.45,
      tie: 0.1,
      loss: 0.45,
      scores: { red: flat, blue: flat },
      baselines: { event: null, teams: null },
      ...body,
    },
  }
}

export const result = (of: string, minute: number, [red, blue]: readonly [number, number]): StandingResult => ({
  match: of,
  since: moment(minute),
  result: { match: of, red: { points: { total: red } }, blue: { points: { total: blue } } },
})
