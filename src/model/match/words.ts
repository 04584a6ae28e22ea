/**
 * Random words of 32 bits are functions of seed, replicate, robot, purpose and leg: whoever asks for the same gets the same, in
 * whatever order, so that two set-ups meet the same luck. The counter of a block of four is its number, the leg, 8 · robot +
 * purpose, and the replicate; the key is the seed.
 */

/**
 * What a robot's random words are for; those of legs, retries and habits are drawn in the event loop. A team's own words, which
 * do not depend on its seat, have a number beyond those of the six robots, the team in the place of the leg, and the draw in
 * that of the replicate.
 */
export const purposes = { match: 0, autonomous: 1, leg: 2, retries: 3, habit: 4, team: 64 } as const

/** One 2³²-th: a word and a half times it lies strictly between 0 and 1. */
export const perWord = 2 ** -32
