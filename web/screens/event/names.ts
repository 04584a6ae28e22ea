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

const clock = new Map<string, Intl.DateTimeFormat>()

/** '14:05', or with the day where it is another than the event's first. */
export function timeOf({ time }: Pick<Match, 'time'>, startsOn: string | undefined): string {
  if (time === undefined) return ''
  const at = new Date(time)
  const language = document.documentElement.lang || 'en'
  const hours =
    clock.get(language) ?? new Intl.DateTimeFormat(language, { hour: '2-digit', minute: '2-digit', hour12: false })
  clock.set(language, hours)
  return startsOn === undefined || time.startsWith(startsOn)
    ? hours.format(at)
    : `${time.slice(5, 10)} ${hours.format(at)}`
}
