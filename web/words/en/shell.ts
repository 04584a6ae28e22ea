export const shell = {
  noScreen: 'There is no such screen',
  skip: 'Skip to the content',
  screens: 'Screens',
  silence: 'The server does not answer. What you type stays in this browser and can be saved when it is back.',
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
}
