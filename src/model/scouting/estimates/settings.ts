/**
 * What is believed before an event is seen. Weak on purpose: some dozens of matches outweigh all of it, except where a
 * comment says so. Spreads are standard deviations of the natural logarithm; chances are on the log-odds scale.
 * None has a source: they are choices, made so that what robots of such games do lies well inside.
 */
export const hyperpriors = {
  /** Between teams, of pieces tried in a match: Gamma shape, that is 1 over the squared relative spread; mean in pieces. */
  attempts: { shape: { median: 4, spread: 1 }, mean: { median: 5, spread: 2 } },
  /** Between teams, of the share of pieces that hit. `strength`: the prior's worth in pieces. */
  success: { logOdds: { mean: 1, sd: 1.5 }, strength: { median: 8, spread: 1.2 } },
  /** Chance not to come, and to stop for good: both are rare. `strength` in matches. */
  rare: { logOdds: { mean: -3, sd: 1 }, strength: { median: 20, spread: 1 } },
  /** Chance to move off the start in autonomous. */
  leaving: { logOdds: { mean: 1.5, sd: 1.5 }, strength: { median: 5, spread: 1 } },
  /** How alike teams share their trips among goals, in trips; and numbers of pieces. */
  goals: { strength: { median: 4, spread: 1.2 }, base: 0.5 },
  pieces: { strength: { median: 6, spread: 1.2 }, base: 0.5 },
  /** The same of finishes and of pieces in autonomous, in matches. After three matches the former still moves the answer. */
  finish: { strength: { median: 2, spread: 0.8 }, base: 0.5 },
  autonomous: { strength: { median: 2, spread: 0.8 }, base: 0.3 },
  /** Times of trips: within a match, between matches (half-normal with this scale: none is possible), between teams, level (s). */
  trip: {
    within: { median: 0.3, spread: 0.7 },
    form: { scale: 0.2 },
    between: { median: 0.3, spread: 0.7 },
    level: { median: 12, spread: 1 },
  },
} as const

/** Draws of what is believed, from which intervals are read; the largest number that ranks need is 1,023. */
export const drawCount = 1024

/** Weight of an own match of an earlier event, and of one before a change of the robot. Common practice, without a source. */
export const defaultDiscount = 0.4

/** What a team says of itself counts as so many matches. */
export const claimWeight = 0.5
