const s = '\u00a0'

/** Trade-offs: the answer, single matches, what is believed, and the list of trade-offs. */
export const tradeoffs = {
  list: {
    title: 'Trade-offs',
    noun: 'trade-off',
    intro:
      'Ways to play side by side over the same unknowns: which is better, how sure that is, and what would turn it.',
  },
  fresh: {
    title: 'Compare ways to play',
    question: 'Question',
    game: 'Game',
    ways: 'Ways to play',
    none: 'There is none for this game yet: make one on a design’s screen.',
    make: 'Compare them',
    loading: 'the ways to play',
    notLoaded: 'The ways to play could not be loaded',
    questionNeeded: 'Please write the question down.',
    twoNeeded: 'Choose at least two ways to play.',
    onlyOne:
      'This game has only one yet. A second is made with ‘New way to play’, on the screen of this design or of another.',
    toDesigns: 'To the designs',
  },
  loading: 'the trade-off',
  notLoaded: 'The trade-off could not be loaded',
  label: (game: string) => `Trade-off · ${game}`,
  source: (of: {
    name: string
    revision: number | null
    dirty: boolean
    options: string[]
    game: string
    gameRevision: number
  }) =>
    `Comparison ‘${of.name}’, revision ${of.revision}${of.dirty ? ' with unsaved edits' : ''}: ${of.options.join('; ')}; ${of.game} (revision ${of.gameRevision}).`,
  sourceOption: (option: string, revision: number, design: string, designRevision: number) =>
    `${option} (revision ${revision}) of ${design} (revision ${designRevision})`,
  newer: (names: string) => `Newer revisions exist than this was computed from: ${names}.`,
  takeNewest: 'Compute with the newest',
  /** The list of the screen's parts: short names. */
  parts: {
    label: 'Parts of this trade-off',
    answer: 'Answer',
    objective: 'What counts',
    matches: 'Match to match',
    swing: 'Arguments',
    turn: 'What turns it',
    map: 'Two unknowns',
    belief: 'Belief',
    call: 'The call',
    piece: 'One more piece',
    unknowns: 'The unknowns',
    own: 'Own numbers',
    decide: 'Write it down',
  },
  notComputed: 'This can not be computed',
  keep: 'Keep this result in the comparison',
  keepWhy:
    'What is stored was computed otherwise. Kept and saved, the new answer is what every device shows at once when it opens this page.',
  keepFirst:
    'Kept and saved, the answer is there at once when this page is opened on any device, before it is computed anew.',
  answer: {
    region: 'Answer',
    perMatch: 'points a match',
    apart: 'points apart',
    chanceBefore: 'The better choice with a chance of',
    chanceAfter: 'over all that you believe.',
    table: 'Options side by side',
    option: 'Option',
    points: 'Points',
    eight: '8 of 10 matches',
    range: (low: string, high: string) => `${low} to ${high}`,
    spread: 'Spread over matches',
    ahead: 'Ahead in a match',
    belief: 'Best, by belief',
    finishes: (option: string, places: string | null): string =>
      places === null ? `${option}: does not finish.` : `${option}: may finish at ${places}.`,
    fresh: 'Computed in your browser from the documents as they stand here.',
    stored: 'This is the stored result.',
    computing: (progress: string | null) =>
      `Computing in your browser${progress === null ? '' : `: ${progress}`} … Shown is the last result.`,
    skip: 'One and the same robot, in its usual form, can not do worse with ‘when it pays’ than with the endgame left out: a plan that may finish can also not do it. Whether to leave it out is a question between two robots, of which the one without is better at something else.',
    skipHere: (best: string, bestPoints: string, skip: string, skipPoints: string) =>
      `Here: ‘${best}’ ${bestPoints} points, ‘${skip}’ ${skipPoints}.`,
  },
  matches: {
    title: 'Match to match',
    loading: 'the matches',
    reach: 'Points to reach',
    chance: (points: string, chance: string) => `${chance} of matches reach ${points} points`,
    below: (count: number, of: number, points: string) => `in ${count} of ${of} matches less than ${points} points`,
    dots: 'Twenty equally likely matches of each',
    match: 'Match of 20',
    means:
      'Each dot is one of 20 equally likely matches of this robot, filled where it stays below the line; the triangle is the mean. What we do not know about the robots is not in it: that is what the unknowns below are for.',
    expected: (points: string) => `${points} expected points`,
  },
  difference: {
    title: 'One match against another',
    loading: 'the difference',
    of: 'Points of',
    less: 'less points of',
    less20: (count: number, own: string, other: string) =>
      `In ${count} of 20 matches ‘${own}’ scores less than ‘${other}’`,
    same20: (count: number) => `, in ${count} they score the same`,
    exact: (chance: string) => `exactly: less in ${chance} of pairs.`,
    figure: 'Twenty equally likely differences',
    pair: 'Pair of 20',
    points: 'Points ahead',
    means:
      'A match of the one against a match of the other, as if the two had nothing to do with each other. Filled dots are matches in which it scores less; the triangle is the mean difference. A lead on average is a lead over many matches, not in each.',
    two: 'Choose two different options.',
    axis: 'points ahead',
  },
  belief: {
    title: 'What you believe, and what to measure next',
    again: 'Compute again',
    compute: 'Compute',
    stop: 'Stop',
    drawing: (share: string) => `2,000 draws of all unknowns: ${share}`,
    progress: 'Progress of the belief',
    stoppedLast: 'Stopped. Shown is the last result.',
    stopped: 'Stopped.',
    none: 'Not computed for these numbers yet. It takes some seconds and can be stopped.',
    best: 'Chance of being the best',
    option: 'Option',
    chance: 'Chance',
    lost: 'Lost on average if chosen',
    points: (points: string) => `${points} points`,
    knowing: 'Worth of knowing one unknown exactly, points a match',
    unknown: 'Unknown',
    perMatch: 'Points a match',
    error: 'Standard error',
    brings: 'Points a match that knowing it would bring',
    everythingBefore: 'Knowing everything before deciding would be worth',
    pointsPerMatch: (points: string) => `${points} points a match`,
    everythingAfter: (error: string) => `(standard error ${error}).`,
    learn: 'What measuring is worth, by number of measurements',
    learnTable: 'Points a match by number of measurements',
    grid: (error: string, form: string) =>
      `Computed at form 1 on a coarse grid of time; on the fine one the difference changes by ${error} points (root mean square). What the spread of form adds at the likely values: ${form}.`,
    time: (name: string, count: number, worth: string) =>
      `Time ‘${name}’ ${count} more ${count === 1 ? 'time' : 'times'} before deciding: worth ${worth} points per match.`,
    try: (name: string, count: number, worth: string) =>
      `Try ‘${name}’ ${count} more ${count === 1 ? 'time' : 'times'} before deciding: worth ${worth} points per match.`,
    measure: (name: string, count: number, worth: string) =>
      `Measure ‘${name}’ ${count} more ${count === 1 ? 'time' : 'times'} before deciding: worth ${worth} points per match.`,
    after: (sentence: string) => `After that: ${sentence}`,
    nothing: 'No measurement of one unknown alone is worth as much as 0.1 points per match.',
    noSpread: 'No unknown has a spread of one measurement yet: without it, what measuring is worth can not be said.',
  },
  unknowns: {
    title: 'The unknowns',
    how: 'What you believe about each: its low, likely and high value. Low and high are what you would be surprised to see passed.',
    howOne:
      'Spread of one measurement: how far a single try or timing usually lies from the mean (standard deviation). With it, the page says what measuring is worth.',
    none: 'None is named yet. Name what you are not sure of, and the page says which of them turn the answer, how sure it is over all that you believe, and what to measure next.',
    added: 'added',
    name: 'Name of the comparison',
    question: 'Question',
    low: 'Low',
    likely: 'Likely',
    high: 'High',
    one: 'Spread of one measurement',
    remove: 'Remove',
    removeOf: (name: string) => `Remove ‘${name}’`,
    again: (name: string, way: number) => `${name}, way ${way}`,
    hardware: (robot: string, mechanism: string) => `${robot}: time of ‘${mechanism}’, by its hardware`,
    another: 'Another unknown',
    add: 'Add it',
    call: 'What you call it',
    callHelp: 'Empty: as chosen',
    taken: (name: string) => `There is an unknown ‘${name}’ already.`,
    seconds: `s`,
  },
  call: {
    title: 'The call',
    how: 'A drive coach can call one number. This is the best one, and what calling three seconds early or late loses.',
    table: 'The one call by option',
    option: 'Option',
    leave: 'Leave with',
    left: (time: string) => `${time} left`,
    points: 'Points',
    early: `3${s}s early loses`,
    late: `3${s}s late loses`,
    free: 'Deciding anew at every moment brings',
    loading: 'the calls',
    none: 'none: no finish is worth leaving for',
    rather: {
      early: (option: string) => `‘${option}’: rather early than late.`,
      late: (option: string) => `‘${option}’: rather late than early.`,
      even: (option: string) => `‘${option}’: three seconds either way cost about the same.`,
      free: (option: string) => `‘${option}’: three seconds either way cost under 0.1 points.`,
    },
    leaveByAll: 'Leave by, from each place',
    leaveBy: (option: string) => `Leave by, from each place: ${option}`,
    from: 'From',
    to: 'To',
    best: 'Best from',
    latest: 'At the latest',
    strip:
      'Solid: leaving is the best thing to do. Hatched: leaving still works, but costs more than half a point against leaving when it became best. Open: go on working. The triangle is the call.',
  },
  piece: {
    title: 'Worth of one more piece, against time left',
    how: 'What it is worth to stand there with one more piece in hand: the points that the robot still earns with it less those without it, both played on as well as it can. That is not the piece’s award: early on it is the trip that need not be made for it, and when there is no time left to score it, nothing.',
    where: 'Where',
    loading: 'the worth of a piece',
    figure: (place: string) => `Points that one more piece in hand is worth, ${place}`,
    left: 'Time left',
    load: (option: string, from: number, to: number) =>
      to - from === 1 ? `${option}, piece ${to}` : `${option}, each of pieces ${from + 1} to ${to}`,
    first: (option: string) => option,
    until: (option: string, time: string) => `‘${option}’: nothing any more with less than ${time} left`,
    typical: (points: string) => `typically ${points} points before that`,
  },
}
