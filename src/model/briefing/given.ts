/** The same for everybody who asks, on a server and in a browser, so that a briefing changes only with what is known. */
export const briefingSeed = 1

/** An opponent that somebody stands in the way of takes a quarter longer for each trip: an assumption, said beside what follows from it. */
export const assumedSlowing = 0.25

/** Matches of the plan: the chance to win has an error of 0.0092 at most. */
export const planned = 3000
