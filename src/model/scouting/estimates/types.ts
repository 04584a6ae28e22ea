/** What is estimated of a team. Pieces are of one match unless said otherwise. */

export type Interval = [low: number, high: number]

export interface Estimate {
  mean: number
  /** Where the expectation lies with 80 % and 95 %. */
  interval80: Interval
  interval95: Interval
  /** Where the next match lies with 80 %, where that is another question. */
  next80: Interval | null
  /** Share of the team's own matches in it, 0 … 1; the rest is the event's. */
  ownWeight: number
}

export interface GoalEstimate {
  /** Pieces tried. */
  attempts: Estimate
  /** Share of them that hits. */
  success: Estimate
  /** Pieces placed. */
  placed: Estimate
}

export interface TeamEstimate {
  team: string
  /** Own matches behind it, those of earlier events not counted. */
  matches: number
  /** Nothing of it has been seen anywhere: all of this is the event's. */
  neverSeen: boolean
  /** Pieces tried in teleop, and points of goals, in a match without stop, lost time or defence, to the usual departure. */
  attempts: Estimate
  points: Estimate
  goals: { [goal: string]: GoalEstimate }
  /** Seconds from trip to trip at median form, and its spreads as geometric standard deviations; null where none was timed at the event. */
  trip: { median: Estimate; within: Estimate; form: Estimate } | null
  /** Share of trips with 1, 2, … pieces. */
  pieces: Estimate[]
  /** Chance of each finish, `none` for none, given that it played and did not stop. */
  finish: { [finish: string]: Estimate }
  finishPoints: Estimate
  /** Pieces that hit in autonomous, and their points with those for moving off the start. */
  autonomous: { [goal: string]: Estimate }
  autonomousPoints: Estimate
  leaves: Estimate
  absent: Estimate
  stops: Estimate
  /** Time left when it departs for its finish (s). */
  departs: Estimate
  /** Seconds of defence in a match; null where it was not watched. */
  defence: number | null
}

/** None of the finishes. */
export const noFinish = 'none'

/** What teams are set side by side by; of a trip's seconds fewer are better, of all else more. */
export const compared = ['total', 'points', 'attempts', 'trip', 'finishPoints', 'autonomousPoints'] as const
export type Compared = (typeof compared)[number]
