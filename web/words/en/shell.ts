export const shell = {
  noScreen: 'There is no such screen',
  toStart: 'To the start page',
  skip: 'Skip to the content',
  screens: 'Screens',
  silence: 'The server does not answer. What you type stays in this browser and can be saved when it is back.',
  unreachable: 'The server does not answer. What you typed stays in this browser; try again when it is back.',
  colophon:
    'Points are expected points of one robot in one match; every number can be opened. Computed in your browser.',
  places: {
    start: 'Start',
    games: 'Games',
    quickSheet: 'Quick sheet',
    designs: 'Designs',
    tradeOffs: 'Trade-offs',
    decisions: 'Decisions',
  },
  settings: 'Settings and help',
  help: 'Help',
  close: 'Close',
  again: 'Try again',
  /** `what` as the areas name it: 'the game'. */
  loading: (what: string) => `Loading ${what} …`,
  theScreen: 'the screen',
  broken: 'This screen could not be drawn',
  safe: 'What you saved is safe, and unsaved edits are kept in this browser.',
  nameMissing: 'Please give a name.',
  table: {
    open: 'Numbers as a table',
    of: (title: string) => `${title}: table`,
  },
  copyOf: (name: string) => `${name}, copy`,
  firstWay: 'All that it can do',
}
