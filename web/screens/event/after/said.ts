import type { Game } from '../../../../src/model/documents/types.ts'
import type { AfterChange, AfterQuestion, AfterReport } from '../../../../src/model/event/after/types.ts'
import type { After } from '../../../data/after.ts'
import { words } from '../../../words/catalogue.ts'
import { plain, points, seconds } from '../../../words/format.ts'
import type { EventPage } from '../EventFrame.tsx'
import { matchName } from '../names.ts'

type Named = Pick<Game, 'goals' | 'sources'>

const goalName = ({ goals }: Named, id: string): string => goals.find((goal) => goal.id === id)?.name ?? id

function legSaid(game: Named, leg: Extract<AfterQuestion, { code: 'slowLeg' }>['leg']): string {
  const texts = words().after
  return leg.kind === 'collect'
    ? texts.collectAt(game.sources.find(({ id }) => id === leg.source)?.name ?? leg.source)
    : texts.scoreAt(goalName(game, leg.goal))
}

/** A question of the evidence as a sentence. */
export function questionSaid(
  question: AfterQuestion,
  { game, decisions }: { game: Named; decisions: AfterReport['decisions'] },
): string {
  const { ask } = words().after
  const decision = (id: string) => decisions.find((each) => each.id === id)?.name ?? id
  switch (question.code) {
    case 'slowLeg':
      return ask.slowLeg(legSaid(game, question.leg), seconds(question.seconds), question.trips)
    case 'slowerTrips':
    case 'quickerTrips':
      return ask[question.code](seconds(question.seconds), question.trips)
    case 'stopped':
      return ask.stopped(question.matches, question.of)
    case 'absent':
      return ask.absent(question.matches)
    case 'standing':
    case 'defended':
      return ask[question.code](seconds(question.seconds), question.matches)
    case 'misses':
      return ask.misses(goalName(game, question.goal), plain(question.missed, 0), plain(question.tried, 0))
    case 'belowDecision':
    case 'aboveDecision':
      return ask[question.code](decision(question.decision), points(question.expected), points(question.seen))
    case 'fewerWins':
    case 'moreWins':
      return ask[question.code](plain(question.came, 1), points(question.expected))
    case 'scoreOff':
      return question.points < 0
        ? ask.scoreLess(points(-question.points), question.matches)
        : ask.scoreMore(points(question.points), question.matches)
  }
}

/** Where it was changed, how, and which designs have times of the field since. */
export function changesSaid(page: EventPage, { copies, report }: Pick<After, 'copies' | 'report'>): string[] {
  const texts = words().after
  const names = new Map(page.schedule.matches.map(({ match }) => [match.id, matchName(match)]))
  const when = ({ afterMatch }: AfterChange) =>
    afterMatch === null ? texts.changeBefore : texts.changeAfter(names.get(afterMatch) ?? afterMatch)
  return [
    ...report.changes.map((change) =>
      change.note ? texts.change(when(change), change.note) : texts.changeNoNote(when(change)),
    ),
    ...copies.map(({ name, shifts }) => texts.copy(name, shifts)),
  ]
}

/** Lines of what the team takes from the event. */
export const lessonsOf = ({ event }: EventPage): string[] =>
  (event.body.lessons ?? '')
    .split('\n')
    .map((line) => line.trim())
    .filter(Boolean)

export function rankSaid({ ranking }: AfterReport): string {
  const texts = words().after
  if (!ranking) return texts.noRank
  const { rank, of, won, tied, lost } = ranking
  return texts.rank(rank, of, won, tied, lost)
}

export function winsSaid({ forecasts }: AfterReport): string | null {
  if (!forecasts) return null
  const { came, matches, expected, range80 } = forecasts
  const texts = words().after
  return texts.wins(plain(came, 1), matches, points(expected), plain(range80[0]), plain(range80[1]))
}

export function tripsSaid({ field }: AfterReport): string | null {
  return field && words().after.trips(seconds(field.seen), seconds(field.model), field.trips)
}

/** What a decision expected, and what was seen instead. */
export function expectedSaid({ chosen, expected: { mean, p10, p90 } }: AfterReport['decisions'][number]): string {
  return words().after.expected(chosen, points(mean), points(p10), points(p90))
}

export function pointsSaid({ points: seen }: AfterReport): string | null {
  return seen && words().after.seenPoints(points(seen.mean), points(seen.interval80[0]), points(seen.interval80[1]))
}
