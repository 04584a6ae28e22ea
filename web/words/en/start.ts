export const start = {
  title: 'What will your robot do, and what will it leave out?',
  intro:
    'Cyclewright turns the season’s rules, the field and a mechanism that is still a sketch into points a match: where the time of a scoring trip goes, what each second is worth, and what would change the answer.',
  words: {
    label: 'Words:',
    terms: {
      expectedPoints: 'expected points',
      cycle: 'cycle',
      option: 'option',
      belief: 'belief',
      breakEven: 'break-even',
    },
    all: 'Help, and all words',
  },
  what: 'the open question',
  notLoaded: 'The open question could not be loaded',
  first: {
    label: 'First steps',
    noDecision: 'No decision yet',
    nothing: 'Nothing here yet',
    decide: 'Open a trade-off, look at what would change the answer, and write it down as a decision.',
    begin:
      'On the first Saturday, a quick sheet ranks ways to play from one guess per trip. Before it, enter your season’s game.',
    toTradeOffs: 'To the trade-offs',
    toGames: 'Enter your own game',
    toQuickSheet: 'Begin a quick sheet',
  },
  question: {
    label: (game: string) => `Open question · ${game}`,
    /** The answer’s two halves around its number, which can be opened. */
    answer: (option: string): [string, string] => [`${option}: `, ' points a match'],
    level: (option: string, other: string): [string, string] => [
      `‘${option}’ and ‘${other}’ are level: `,
      ' points apart',
    ],
    chance: ['It is the better choice with a chance of ', ' over all that you believe.'] as [string, string],
    matches: (option: string, share: string) =>
      `In single matches it scores more than ‘${option}’ ${share} of the time.`,
    source: (decision: string, revision: number, comparison: string, of: number) =>
      `From the decision record ‘${decision}’, revision ${revision}; comparison ${comparison}, revision ${of}.`,
    failed: (why: string) => `Could not be computed anew here: ${why} Shown is the stored answer.`,
    same: (by: string) => `Computed anew in your browser just now: the same as the stored answer to ${by} points.`,
    differs: (by: string) =>
      `Computed anew in your browser just now; the stored answer differed by up to ${by} points.`,
    computing: 'The stored answer; computing it anew in your browser …',
    tradeOff: 'See the trade-off',
    designs: 'Look at the designs',
    decision: 'Read the decision record',
  },
  matches: {
    what: 'the picture of matches',
    title: 'Twenty equally likely matches of each',
    head: 'Match of 20',
    legend: 'Each dot is one of 20 equally likely matches; the triangle is the mean. Points of this robot alone.',
  },
  shelves: {
    game: { title: 'Games', none: 'No game yet.', add: 'Enter your own game' },
    quickSheet: { title: 'Quick sheets', none: 'No quick sheet yet.', add: 'Rank ways to play' },
    design: { title: 'Designs', none: 'No design yet.', add: 'Sketch a robot' },
    comparison: { title: 'Trade-offs', none: 'No trade-off yet.', add: 'Compare ways to play' },
  },
  saved: (revision: number, when: string) => `revision ${revision}, ${when}`,
}
