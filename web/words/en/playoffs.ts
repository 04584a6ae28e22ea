/** The playoffs: bracket, chances, who plays of four, roles. */
export const playoffs = {
  title: 'Playoffs',
  loading: 'the playoffs',
  notLoaded: 'The playoffs could not be loaded',
  none: 'There are no alliances yet',
  noneHow:
    'Write down the selection as it is called out, or enter the matches of the playoffs: then this page knows them.',
  toPicks: 'To the selection',
  known: {
    selection: 'Alliances as they were called out.',
    matches: 'Alliances as they have played together, in the order of their first matches.',
  },
  stillRunning: 'The selection is not over yet.',
  formats: {
    double: (alliances: number) => `Double elimination of ${alliances} alliances.`,
    bestOf: (alliances: number) => `Series among ${alliances} alliances.`,
  },
  chances: 'Who wins the event',
  theChances: 'the chances',
  chancesHow:
    'The bracket is played on 10,000 times from where it stands, each time with one draw of what is not known of the teams. Of four robots those three play who are expected to score most together. ± is the luck of the runs.',
  alliance: 'Alliance',
  robots: 'Robots',
  finals: 'Reaches the final',
  wins: 'Wins the event',
  sits: (teams: string) => `sits out: ${teams}`,
  numbered: (number: number) => `Alliance ${number}`,
  oursNumbered: (number: number) => `Alliance ${number}, ours`,
  bracket: 'Bracket',
  bracketTable: 'Bracket: table',
  tie: 'No.',
  part: 'Round',
  meet: 'Who meets',
  stands: 'How it stands',
  parts: {
    upper: (round: number, games: number) => `Upper part, round ${round}${games > 1 ? `, best of ${games}` : ''}`,
    lower: (round: number, games: number) => `Lower part, round ${round}${games > 1 ? `, best of ${games}` : ''}`,
    final: (_: number, games: number) => (games > 1 ? `Final, best of ${games}` : 'Final'),
  },
  from: {
    winner: (tie: number) => `winner of no. ${tie}`,
    loser: (tie: number) => `loser of no. ${tie}`,
  },
  against: (one: string, other: string) => `${one} – ${other}`,
  won: (number: number) => `Alliance ${number} won`,
  open: 'open',
  apart: (count: number) =>
    count === 1
      ? 'One match of the playoffs fits no open tie, and is left out.'
      : `${count} matches of the playoffs fit no open tie, and are left out.`,
  fourth: 'Who sits out',
  fourthHow: 'The chance to win the event with each three of our four robots, in the same luck.',
  theThrees: 'the threes',
  compareThrees: 'Compare the threes',
  bestThree: (teams: string) => `Best with ${teams}.`,
  noBestThree: 'No three is better by more than the luck of the runs.',
  play: 'Play',
  sitsOut: 'Sits out',
  fourthRules: 'Whether and when robots may be exchanged, the event’s rules say.',
  roles: 'Roles for winning',
  rolesHow: (teams: string) =>
    `There are no ranking points any more: looked for are the roles of ${teams} with the best chance to win a match, marking one of theirs among them.`,
  opponent: 'Against',
  slowdown: 'A marked robot drives longer by',
  markFrom: 'Marking begins before the end',
  opponentSeen: (robots: string) => `Against ${robots}.`,
  seenTimes: (team: string, times: number) => `${team} (seen in ${times === 1 ? 'one match' : `${times} matches`})`,
  assumed:
    'How much marking slows is an assumption; fouls while marking are not counted. 0 % looks for roles without marking.',
  search: 'Look for roles',
  searching: 'Playing line-ups against each other…',
  foundAgainst: (teams: string) => `Against ${teams}:`,
}
