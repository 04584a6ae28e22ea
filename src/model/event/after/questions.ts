import type { AfterQuestion, AfterReport } from './types.ts'

type Evidence = Omit<AfterReport, 'questions'>

/** Below these a number is no question: seconds of a trip, seconds of a match, tries, share of them that missed. */
const least = { trip: 0.3, match: 3, tries: 10, missed: 0.3 }

/**
 * What the evidence asks, what went against us first. A difference is asked about only where chance alone would bring it less than
 * once in twenty times, or once in five for counts of wins; losses of time where they are worth seconds of a match.
 */
export function questionsOf(of: Evidence): AfterQuestion[] {
  return [...ofDecisions(of), ...ofForecasts(of), ...ofTrips(of), ...ofTime(of), ...ofMisses(of), ...pleasant(of)]
}

function ofDecisions({ decisions, points }: Evidence): AfterQuestion[] {
  if (!points) return []
  return decisions
    .filter(({ ofDesign, expected }) => ofDesign && expected.mean > points.interval95[1])
    .map(({ id, expected }) => ({ code: 'belowDecision', decision: id, expected: expected.mean, seen: points.mean }))
}

function ofForecasts({ forecasts }: Evidence): AfterQuestion[] {
  if (!forecasts) return []
  const { expected, came, range80, difference, matches } = forecasts
  const wins: AfterQuestion[] = came < range80[0] ? [{ code: 'fewerWins', expected, came }] : []
  const { mean, error } = difference
  // Student's t for a handful of matches is wider than two errors; with six or more it is 2.6 at most.
  const off = error !== null && matches >= 6 && Math.abs(mean) > 2.6 * error
  return off && mean < 0 ? [...wins, { code: 'scoreOff', points: mean, matches }] : wins
}

function ofTrips({ field }: Evidence): AfterQuestion[] {
  if (!field?.interval95 || field.interval95[0] <= 0 || field.difference < least.trip) return []
  const [first] = field.legs
  return first && first.difference >= least.trip
    ? [{ code: 'slowLeg', leg: first.leg, seconds: first.difference, trips: first.trips }]
    : [{ code: 'slowerTrips', seconds: field.difference, trips: field.trips }]
}

function ofTime({ losses, absent, watched }: Evidence): AfterQuestion[] {
  const by = new Map(losses.map((loss) => [loss.kind, loss]))
  const found: AfterQuestion[] = []
  const stopped = by.get('stopped')
  if (stopped && stopped.matches > 0) found.push({ code: 'stopped', matches: stopped.matches, of: watched })
  if (absent > 0) found.push({ code: 'absent', matches: absent })
  for (const kind of ['standing', 'defended'] as const) {
    const loss = by.get(kind)
    if (loss && loss.seconds >= least.match) found.push({ code: kind, seconds: loss.seconds, matches: loss.matches })
  }
  return found
}

function ofMisses({ misses }: Evidence): AfterQuestion[] {
  return misses
    .filter(({ tried, missed }) => tried >= least.tries && missed / tried >= least.missed)
    .map(({ goal, tried, missed }) => ({ code: 'misses', goal, tried, missed }))
}

/** What went better than was said wants to be understood as well. */
function pleasant({ decisions, points, forecasts, field }: Evidence): AfterQuestion[] {
  const found: AfterQuestion[] = []
  if (points)
    for (const { id, ofDesign, expected } of decisions)
      if (ofDesign && expected.mean < points.interval95[0])
        found.push({ code: 'aboveDecision', decision: id, expected: expected.mean, seen: points.mean })
  if (forecasts) {
    const { expected, came, range80, difference, matches } = forecasts
    if (came > range80[1]) found.push({ code: 'moreWins', expected, came })
    const { mean, error } = difference
    if (error !== null && matches >= 6 && mean > 2.6 * error) found.push({ code: 'scoreOff', points: mean, matches })
  }
  if (field?.interval95 && field.interval95[1] < 0 && field.difference <= -least.trip)
    found.push({ code: 'quickerTrips', seconds: -field.difference, trips: field.trips })
  return found
}
