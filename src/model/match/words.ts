/**
 * Random words of 32 bits are functions of seed, replicate, robot, purpose and leg: whoever asks for the same gets the same, in
 * whatever order, so that two set-ups meet the same luck. The counter of a block of four is its number, the leg, 8 · robot +
 * purpose, and the replicate; the key is the seed.
 */

/** What a robot's random words are for; those of legs and retries are drawn in the event loop. */
export const purposes = { match: 0, autonomous: 1, leg: 2, retries: 3, habit: 4 } as const

/** One 2³²-th: a word and a half times it lies strictly between 0 and 1. */
export const perWord = 2 ** -32
