export const shell = {
  noScreen: 'There is no such screen',
  toStart: 'To the start page',
  skip: 'Skip to the content',
  screens: 'Screens',
  silence: 'The server does not answer. What you type stays in this browser and can be saved when it is back.',
  unreachable: 'The server does not answer. What you typed stays in this browser; try again when it is back.',
  colophon:
    'Points are expected points in one match: of one robot alone, and on the match’s page of alliances. Every number can be opened. Computed in your browser.',
  /** Under what belongs to an event. */
  colophonOfEvent:
    'Points and pieces are of one match. Numbers of a robot open and say what they are made of, down to the records. Computed on the server.',
  places: {
    start: 'Start',
    games: 'Games',
    quickSheet: 'Quick sheet',
    designs: 'Designs',
    tradeOffs: 'Trade-offs',
    decisions: 'Decisions',
    match: 'Match',
    event: 'Event',
  },
  settings: 'Settings and help',
  help: 'Help',
  parts: 'Parts shelf',
  close: 'Close',
  again: 'Try again',
  /** `what` as the areas name it: 'the game'. */
  loading: (what: string) => `Loading ${what} …`,
  theScreen: 'the screen',
  broken: 'This screen could not be drawn',
  safe: 'What you saved is safe, and unsaved edits are kept in this browser.',
  nameMissing: 'Please give a name.',
  copyOf: (name: string) => `${name}, copy`,
  firstWay: 'All that it can do',
}
