/** The most places of a game, stages of a trip, and stands of all players that the memory has room for. */
export const most = { places: 64, stages: 64, stands: 8192 } as const

let used = 0

/** Places of real numbers, counted in eights of bytes. */
const reals = (count: number): number => {
  const place = used
  used += count
  return place
}

/** Places of whole numbers of four bytes, counted in fours. */
const wholes = (count: number): number => 2 * reals(Math.ceil(count / 2))

/**
 * Where the numbers of a match lie in its memory. By robot: six in a row, ours first. By side: as many as the game has places,
 * ours first. Numbers of a hold goal h and an alliance a stand at 2 · h + a.
 */
export const at = {
  // The match: seconds since its start
  teleopAt: reals(1),
  endsAt: reals(1),
  endgameAt: reals(1),
  places: wholes(1),
  sources: wholes(1),
  holds: wholes(1),
  /** Two words of the seed. */
  key: wholes(2),

  // By place
  slots: wholes(most.places),
  capacity: wholes(most.places),
  shared: wholes(most.places),
  size: wholes(most.places),
  every: reals(most.places),
  restockAt: reals(most.places),
  teleopPoints: reals(most.places),
  finishPoints: reals(most.places),
  /** Whether others feel each piece at its own time; number of the hold goal or −1. */
  matters: wholes(most.places),
  holdOf: wholes(most.places),

  // By side and place
  stock: wholes(2 * most.places),
  counts: wholes(2 * most.places),
  busy: wholes(2 * most.places),
  queued: wholes(2 * most.places),
  /** Three robots each. */
  queue: wholes(6 * most.places),

  // By robot and place
  placed: wholes(6 * most.places),
  taken: wholes(6 * most.places),
  waited: reals(6 * most.places),

  // By robot
  time: reals(6),
  order: reals(6),
  what: wholes(6),
  /** 0 absent, 1 played, 2 stopped on the way. */
  played: wholes(6),
  stopAt: reals(6),
  form: reals(6),
  stand: wholes(6),
  load: wholes(6),
  leg: wholes(6),
  legNumber: wholes(6),
  startedAt: reals(6),
  arrivedAt: reals(6),
  wholeTime: reals(6),
  counted: wholes(6),
  points: reals(6),
  marked: reals(6),
  markingSince: reals(6),
  /** Time left, −1 for never. */
  defendsFrom: reals(6),
  defendsUntil: reals(6),
  callAt: reals(6),
  /** Table and length of the drive's pace. */
  pace: wholes(12),
  /** Where the words of the leg in hand and the times of its pieces lie. */
  legWordsOf: wholes(6),
  piecesOf: wholes(6),
  /** Three pairs of a marker and the mind under its marking, the strongest first, −1 where there are fewer; at 7 the own mind. */
  minds: wholes(48),
  /** The goal that an observed robot has drawn for the trip under way, by its place; −1 for none. */
  intent: wholes(6),

  // By stand
  standLegs: wholes(most.stands),
  standCount: wholes(most.stands),

  // Holding
  holdRate: reals(most.places),
  heldSince: reals(most.places),
  heldPieces: wholes(2 * most.places),
  heldSeconds: reals(2 * most.places),
  heldPoints: reals(2 * most.places),
  near: reals(2 * most.places),
  nearBefore: reals(2 * most.places),

  // To work on
  finished: reals(most.stages),
  retryWords: wholes(24),
  /** Eight words of each robot's match: whether it comes, stops, when, its form, leaves, and its fouls. */
  matchWords: wholes(48),
  /** Words of an observed robot's trip: its goal, its source, its pieces, and its goal again where that one is full. */
  habitWords: wholes(8),

  /**
   * In a mind, a player's choices at one speed of its drive: where its views begin, and the number of times of one room.
   * Four numbers by stand: where its best actions, its best four and its lists begin (−1 for none), and how many places its
   * legs lead to, which is the third.
   */
  mindViews: 0,
  mindTimes: 1,
  /** Where the factor of its drives lies; goals with a capacity; of each its place, the most room, and the stride. */
  mindSlow: 2,
  mindDimensions: 3,
  mindFirstDimension: 4,

  /**
   * The mind of an observed robot has −1 for its views, and names its habit: how many goals it has and where their shares
   * begin, the same of its pieces per trip, then of each goal its place and the sources (one bit each) whose pieces it takes,
   * then the pieces of a trip, rising.
   */
  mindHabit: 1,
  habitGoals: 0,
  habitShares: 1,
  habitCounts: 2,
  habitCountShares: 3,
  habitFirst: 4,
} as const

/** Real numbers that all this takes; what comes after it differs from match to match. */
export const fixedReals = used
