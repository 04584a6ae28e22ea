/** Sheets of paper for the stands. */
export const sheets = {
  title: 'Sheets of paper',
  intro:
    'For a phone without power: the boxes of the phone’s form, three robots a page. Afterwards each sheet is keyed on the hand-in page, in the order of its numbers.',
  loading: 'the event',
  notLoaded: 'The event could not be loaded',
  phase: 'Phase',
  phases: { practice: 'Practice', qualification: 'Qualification', playoff: 'Playoff' },
  from: 'From match',
  count: 'How many matches',
  blank: 'Without match and teams',
  print: 'Print',
  noMatch: 'The schedule has no such match. Choose another one, or print sheets without match and teams.',
  pages: (pages: number) => `${pages} pages, black and white, on A4 or Letter.`,
  fields: {
    absent: 'Did not play',
    left: 'Left its start',
    lost: 'Seconds lost',
    note: 'Note',
    period: { auto: 'autonomous', teleop: 'teleop' },
    count: {
      scored: (goal: string, period: string) => `${goal} scored, ${period}`,
      missed: (goal: string, period: string) => `${goal} missed, ${period}`,
    },
    finish: { attempted: 'Finish tried', achieved: 'Finish reached' },
    foul: { minor: 'Minor fouls', major: 'Major fouls' },
  },
  paper: {
    page: (match: string, alliance: string) => `Sheet ${match} ${alliance}`,
    alliances: { red: 'Red', blue: 'Blue' },
    matchBlank: 'Match ________',
    robot: (place: number) => `Place ${place} · team`,
    scout: 'Written by ________________',
    how: 'Make strokes while you watch; write the number beside them afterwards. Yes is 1. Finishes:',
    finish: (number: number, name: string) => `${number} ${name}`,
  },
}
