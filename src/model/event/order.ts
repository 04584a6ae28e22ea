import { type Match, type Phase, phases } from '../scouting/types.ts'

/** What people call a match by: its phase, number and play. */
export type MatchName = Pick<Match, 'phase' | 'number' | 'play'>

export const matchKey = ({ phase, number, play }: MatchName): string => `${phase} ${number} ${play}`

/** The order in which matches are played: by phase, number and play. A time only says when one is expected. */
export const inOrder = (a: MatchName, b: MatchName): number =>
  phases.indexOf(a.phase) - phases.indexOf(b.phase) || a.number - b.number || a.play - b.play

/** The id of a match that came in without one. */
export const idOf = ({ phase, number, play }: MatchName): string =>
  play === 1 ? `${phase}-${number}` : `${phase}-${number}-${play}`

const short: { readonly [phase in Phase]: string } = {
  practice: 'Practice',
  qualification: 'Qualification',
  playoff: 'Playoff',
}

/** 'Qualification 12', and for a replay 'Qualification 12, play 2': in English, for sentences of the API. */
export const matchTitle = ({ phase, number, play }: MatchName): string =>
  `${short[phase]} ${number}${play === 1 ? '' : `, play ${play}`}`

/** Ids of the matches whose result no longer counts, because a later play voids it. */
export const voided = (matches: readonly Pick<Match, 'voids'>[]): Set<string> =>
  new Set(matches.flatMap(({ voids }) => (voids === undefined ? [] : [voids])))
