/** After an event: predicted, seen, changed. */
export const after = {
  title: 'After the event',
  what: 'what was predicted and seen',
  trouble: 'What was predicted and seen could not be put together',
  team: 'Team',
  design: 'Its design',
  views: { report: 'Whole', slide: 'One slide', publish: 'For other teams' },
  viewsLabel: 'How to look at it',
  none: 'No match of this team has been played or forecast yet',
  noneHow: 'Once there are results, or forecasts that were kept before a match, they stand here beside each other.',
  questions: 'What the evidence asks',
  questionsHow:
    'What went against us stands first. A question is asked where chance alone would seldom bring as much; it says where to look, not what to do.',
  noQuestions: 'Nothing stands out: what was seen fits what was said, as far as so few matches tell.',
  ask: {
    slowLeg: (leg: string, seconds: string, trips: number) =>
      `${leg} took ${seconds} longer than by the design, over ${trips} trips. Which of its stages is slower than drawn?`,
    slowerTrips: (seconds: string, trips: number) =>
      `A trip took ${seconds} longer than by the design, over ${trips} trips. Where does it wait?`,
    quickerTrips: (seconds: string, trips: number) =>
      `A trip took ${seconds} less than by the design, over ${trips} trips. Was the design too careful, and which plan follows from the new times?`,
    stopped: (matches: number, of: number) =>
      `The robot stopped for good in ${matches} of ${of} matches that were watched. What broke each time, and was it the same thing?`,
    absent: (matches: number) =>
      `The robot did not come to ${matches === 1 ? 'one match' : `${matches} matches`}. What kept it in the pit?`,
    standing: (seconds: string, matches: number) =>
      `It stood for ${seconds} a match on average, in ${matches} matches. Was it stuck, without connection, or waiting for a partner?`,
    defended: (seconds: string, matches: number) =>
      `It was defended for ${seconds} a match on average, in ${matches} matches. Is there another way round, or another source?`,
    misses: (goal: string, missed: string, tried: string) =>
      `At ${goal} ${missed} of ${tried} tries missed. From where were they tried, and are the nearer ones worth the drive?`,
    belowDecision: (decision: string, expected: string, seen: string) =>
      `‘${decision}’ expected ${expected} points a match; by what was seen it is ${seen}. Which of its assumptions did not hold?`,
    aboveDecision: (decision: string, expected: string, seen: string) =>
      `‘${decision}’ expected ${expected} points a match; by what was seen it is ${seen}. Which of its assumptions was too careful?`,
    fewerWins: (came: string, expected: string) =>
      `We won ${came} matches where forecasts expected ${expected}. What did they not see: partners, defence, or our own robot?`,
    moreWins: (came: string, expected: string) =>
      `We won ${came} matches where forecasts expected ${expected}. Luck, or something that they did not see?`,
    scoreLess: (points: string, matches: number) =>
      `Our alliances scored ${points} points less than forecast, over ${matches} matches. Whose part was missing?`,
    scoreMore: (points: string, matches: number) =>
      `Our alliances scored ${points} points more than forecast, over ${matches} matches. What went better than it had before?`,
  },
  collectAt: (source: string) => `Collecting at ${source}`,
  scoreAt: (goal: string) => `Scoring at ${goal}`,
  predicted: 'Predicted',
  seen: 'Seen',
  changed: 'Changed',
  ours: 'Our matches',
  oursHow:
    'Chances and scores are those that were kept before the match; brackets hold where the score was to lie with 80 %.',
  match: 'Match',
  chance: 'Chance to win',
  score: 'Our score, forecast',
  came: 'Result',
  range: (mean: string, low: string, high: string) => `${mean} (${low} to ${high})`,
  result: (ours: string, theirs: string) => `${ours} : ${theirs}`,
  notForecast: 'none kept',
  waiting: 'to come',
  counted: (inside: number, of: number) => `${inside} of ${of} scores lay where they were to with 80 %.`,
  wins: (came: string, of: number, expected: string, low: string, high: string) =>
    `Won ${came} of ${of}; forecasts expected ${expected}, with 80 % between ${low} and ${high}.`,
  tie: 'A tie counts half.',
  rank: (rank: number, of: number, won: number, tied: number, lost: number) =>
    `Rank ${rank} of ${of}: ${won} won, ${tied} tied, ${lost} lost.`,
  noRank: 'Not ranked yet.',
  time: 'Where our robot lost its time',
  timeHow: (watched: number) =>
    `Seconds of teleop a match, from ${watched === 1 ? 'one match' : `${watched} matches`} that were watched. Parts may overlap: who is defended also takes longer for a trip.`,
  noTime: 'No match of our robot was watched, so nothing can be said about its time.',
  loss: 'What',
  seconds: 'A match',
  inMatches: 'In matches',
  losses: {
    slower: 'Trips longer than by the design',
    stopped: 'Stopped for good',
    standing: 'Stood and went on',
    defended: 'Was defended',
  },
  quicker: 'Trips shorter than by the design',
  trips: (seen: string, model: string, trips: number) =>
    `A trip took ${seen} on the field and ${model} by the design, over ${trips} trips.`,
  noField: 'Nothing was timed that could be put against the design.',
  toField: 'Leg by leg',
  toForecasts: 'All forecasts',
  decisions: 'What decision records said',
  noDecisions: 'No decision of this game is on record.',
  decided: (name: string, day: string) => `${name}, ${day}`,
  expected: (way: string, mean: string, low: string, high: string) =>
    `Chosen: ${way}, ${mean} points a match expected, in 8 of 10 matches between ${low} and ${high}.`,
  seenPoints: (mean: string, low: string, high: string) =>
    `By what was seen: ${mean} points a match; the expectation lies between ${low} and ${high} with 80 %.`,
  otherDesign: 'It chose another design than the one that is looked at here.',
  check: 'To be looked at on the field',
  checkExpected: 'Expected then',
  wouldChange: 'It named as what would change it',
  changes: 'What was changed',
  noChanges: 'No change of our robot was recorded.',
  changeAfter: (match: string) => `after ${match}`,
  changeBefore: 'before the first match',
  change: (when: string, note: string) => `The robot was changed ${when}: ${note}`,
  changeNoNote: (when: string) => `The robot was changed ${when}; nobody noted how.`,
  copy: (name: string, shifts: number) =>
    shifts === 1
      ? `Design ‘${name}’ has one stage with its time on the field.`
      : `Design ‘${name}’ has ${shifts} stages with their times on the field.`,
  lessons: 'What we take from it',
  lessonsHow:
    'A line each; they stand on the slide. A lead writes them, the version for other teams does not hold them.',
  saveLessons: 'Save',
  saved: 'Saved.',
  undo: 'Take back',
  conflict: 'The event was changed elsewhere meanwhile. Load the page anew, then save: what you typed stays here.',
  tooLong: (got: number) => `2,000 characters at most, these are ${got}`,
  carried: 'What is carried over',
  carriedHow:
    'At the next event of this game its page ‘What the field says’ offers to let matches of this one count, at a discount.',
  toEstimates: 'What the field says',
  print: 'Print',
  slideOf: (event: string, team: string) => `${event}: team ${team}`,
  more: (count: number) => `and ${count} more, on the whole page`,
  nothingChanged: 'Nothing on record yet.',
  slideSource: (records: number, forecasts: number) =>
    `From ${records} matches of our robot that were watched and ${forecasts} forecasts that were kept before their matches.`,
  publish: {
    title: 'For other teams',
    intro:
      'What can be given away: official totals, the ranking, pieces that were counted, and what we say of ourselves. It holds no estimates, forecasts or pick orders of others, no doubts, no notes, no orders of driving or defence, and no names of people.',
    look: 'Look through it before you give it away: what was counted may be wrong, and once it is out it stays out.',
    file: 'Save as a file',
    handed: (name: string) => `${name} was handed to the browser.`,
    what: 'the version for other teams',
    trouble: 'The version for other teams could not be made',
    ranking: 'Ranking by official results',
    rank: 'Rank',
    played: 'Played',
    record: 'Won – tied – lost',
    matches: 'Official totals',
    red: 'Red',
    blue: 'Blue',
    total: 'Red : Blue',
    open: 'no result',
    countedTitle: 'Pieces counted a match, autonomous + teleop',
    countedHow: 'Means over the matches in which somebody watched the robot.',
    countedMatches: 'Matches watched',
    own: 'What we say of ourselves',
    ownTrips: (field: string, model: string, trips: number) =>
      `A trip of ours took ${field} on the field, over ${trips} trips; our design said ${model}.`,
    ownForecasts: (won: string, matches: number, expected: string) =>
      `Our forecasts of our own matches expected ${expected} wins in ${matches}; ${won} came.`,
    noOwn: 'Nothing was timed or forecast of our own matches.',
  },
}
