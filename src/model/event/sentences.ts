import type { Refusal } from '../picks/selection/types.ts'
import type { Alliance, Phase } from '../scouting/types.ts'
import { matchTitle } from './order.ts'

/** A match as a sentence names it. */
export interface Named {
  phase: Phase
  number: number
  play: number
}

const list = (teams: readonly string[]): string => teams.join(', ')

const notInvited: Record<Refusal, string> = {
  unknown: 'is not among the seeds',
  declined: 'declined before, and is not invited again',
  withdrawn: 'does not take part',
  captain: 'is a captain, who may not be invited now',
  taken: 'is in an alliance already',
  own: 'is in the alliance whose turn it is',
  over: 'can not be invited: the selection is over',
  running: 'can join an alliance only after the selection',
  noAlliance: 'can not join an alliance that has no captain',
}

/** What is said of schedules, results and assignments, in English. Numbers of teams are texts. */
export const eventSentences = {
  // A schedule
  teamTwice: (of: { match: Named; team: string }) => `${matchTitle(of.match)}: team ${of.team} plays twice in it`,
  unknownTeam: (of: { match: Named; team: string }) =>
    `${matchTitle(of.match)}: team ${of.team} is not among the teams of the event`,
  positionTwice: (of: { match: Named; alliance: Alliance; position: number }) =>
    `${matchTitle(of.match)}: position ${of.position} of ${of.alliance} is given twice`,
  matchTwice: (of: { match: Named }) => `${matchTitle(of.match)} is there twice`,
  matchIdTwice: (of: { id: string }) => `Two matches have the id “${of.id}”`,
  voidsNothing: (of: { match: Named; id: string }) =>
    `${matchTitle(of.match)} voids “${of.id}”, which is no match of the schedule`,
  voidsOther: (of: { match: Named; voided: Named }) =>
    `${matchTitle(of.match)} can void an earlier play of the same match only, not ${matchTitle(of.voided)}`,
  voidedTwice: (of: { match: Named; voided: Named }) =>
    `${matchTitle(of.match)} voids ${matchTitle(of.voided)}, which another match voids already`,
  playWithoutVoid: (of: { match: Named }) =>
    `${matchTitle(of.match)} voids no earlier play: the results of both would count`,
  sameTime: (of: { match: Named; other: Named; teams: readonly string[] }) =>
    `${matchTitle(of.match)} is at the same time as ${matchTitle(of.other)}, and both have ${list(of.teams)}`,
  allianceTooLarge: (of: { teams: readonly string[]; most: number }) =>
    `In the playoffs ${list(of.teams)} play together: an alliance has at most ${of.most} robots`,

  // A result
  noMatch: (of: { id: string }) => `“${of.id}” is no match of the schedule`,
  resultTwice: (of: { match: Named }) => `${matchTitle(of.match)}: there are two results for it`,
  otherMatch: (of: { entry: string; result: string }) =>
    `The entry is about the match “${of.entry}”, its result about “${of.result}”`,
  unknownBonus: (of: { match: Named; id: string }) => `${matchTitle(of.match)}: the game has no bonus “${of.id}”`,
  unknownGoal: (of: { match: Named; id: string }) => `${matchTitle(of.match)}: the game has no goal “${of.id}”`,
  partsAboveTotal: (of: { match: Named; alliance: Alliance; parts: number; total: number }) =>
    `${matchTitle(of.match)}, ${of.alliance}: the categories add up to ${of.parts}, which is more than the total of ${of.total}`,
  resultOfVoided: (of: { match: Named; by: Named }) =>
    `${matchTitle(of.match)} is voided by ${matchTitle(of.by)}: its result is kept, and does not count`,

  // Assignments
  seatTwice: (of: { match: Named; alliance: Alliance; position: number }) =>
    `${matchTitle(of.match)}: ${of.alliance}, position ${of.position} is assigned twice`,
  personTwice: (of: { match: Named; person: string }) => `${matchTitle(of.match)}: ${of.person} is to watch two robots`,
  noWatcher: (of: { person: string }) => `There is nobody here with the id “${of.person}”`,

  // A selection
  selectionNotBegun: (_: Record<string, never>) => 'No selection has begun yet: begin it with its rules and seeds',
  selectionNotLast: (_: Record<string, never>) => 'Only the last line that is in force can be undone',
  seedTwice: (of: { team: string }) => `Team ${of.team} is named twice`,
  noTeamOfEvent: (of: { team: string }) => `Team ${of.team} is not among the teams of the event`,
  notInvitable: (of: { team: string; kind: Refusal }) => `Team ${of.team} ${notInvited[of.kind]}`,
  otherTopic: (_: Record<string, never>) => 'Lines that are sent together must all be of one topic',

  // Somebody else was quicker
  changedMeanwhile: (_: Record<string, never>) =>
    'The event was changed since you looked: look again before you apply it',
  noEvent: (of: { id: string }) => `There is no event with the id “${of.id}”`,
  whoTakes: (_: Record<string, never>) => 'Say who takes the seat',
  onlyForYourself: (_: Record<string, never>) => 'A seat is taken over for oneself; a lead can do it for others',
} as const

type Sentences = typeof eventSentences

export type EventSaid = {
  [Code in keyof Sentences]: { code: Code; parts: Parameters<Sentences[Code]>[0] }
}[keyof Sentences]

/** A sentence in English, with its name and parts. */
export function tellEvent(said: EventSaid): { message: string; said: EventSaid } {
  const sentence = eventSentences[said.code] as (of: object) => string
  return { message: sentence(said.parts), said }
}
