import type { Match } from '../types.ts'

/**
 * Matches that are still to come on the day of the next one, as the schedule writes its times. A match without a time is taken to be of
 * the day.
 * @param matches in the order of play
 * @param begun whether something of a match is known already: a result, or a record
 */
export function comingToday(matches: readonly Match[], begun: (match: string) => boolean): Match[] {
  const voided = new Set(matches.flatMap(({ voids }) => voids ?? []))
  const coming = matches.filter(({ id }) => !voided.has(id) && !begun(id))
  const dayOf = ({ time }: Match) => time?.slice(0, 10)
  const today = coming.map(dayOf).find((day) => day !== undefined)
  return coming.filter((match) => dayOf(match) === undefined || dayOf(match) === today)
}
