import type { Alliance, Match, Seat, Slot } from '../../../src/model/scouting/types.ts'
import { words } from '../../words/catalogue.ts'

export { matchName } from './matchNames.ts'

export const allianceName = (alliance: Alliance): string => words().event.alliances[alliance]

/** 'Red, position 2'. */
export const seatName = ({ alliance, position }: Seat): string => words().event.seat(allianceName(alliance), position)

/** What is special about a robot in a match, in a word or two; empty where nothing is. */
export function slotMark({ counts, state }: Slot): string {
  const texts = words().event.marks
  const special = state === 'absent' || state === 'disqualified' ? texts[state] : ''
  return [counts ? '' : texts.surrogate, special].filter(Boolean).join(', ')
}

/** '14:05' by the event's own clock, as it was written, wherever one looks from; with the day where it is not the event's first. */
export function timeOf({ time }: Pick<Match, 'time'>, startsOn: string | undefined): string {
  if (time === undefined) return ''
  const clock = time.slice(11, 16)
  return startsOn !== undefined && time.startsWith(startsOn) ? clock : `${time.slice(0, 10)} ${clock}`
}
