/** What options are judged by: points, wins or ranking points with a stated field. */
export const objective = {
  title: 'What counts',
  help: 'Points are those of one robot alone, and exact. Wins and ranking points depend on who else plays: say with whom and against whom, and whole matches are played.',
  judge: 'Judge by',
  names: { points: 'Points', win: 'Wins', rankingPoints: 'Ranking points' },
  by: { win: 'wins', rankingPoints: 'ranking points' },
  partners: 'With each option play',
  opponents: 'Against it play',
  partner: (position: number) => `Partner ${position}`,
  opponent: (position: number) => `Opponent ${position}`,
  loading: 'the ways to play',
  noWays: 'No way to play of this game is left to choose from.',
  notFound: 'Partners or opponents could not be loaded',
  region: 'Answer by whole matches',
  ahead: (by: string, best: string, lead: string) => `By ${by}: ${best}, ${lead} a match`,
  alone: (by: string, best: string) => `By ${by}: ${best}`,
  level: (by: string, best: string, second: string, lead: string) =>
    `By ${by} these matches do not tell ‘${best}’ and ‘${second}’ apart: ${lead} a match`,
  byPoints: 'By points:',
  same: (best: string, lead: string) => `By points ‘${best}’ is ahead, too: ${lead} a match.`,
  pointsLevel: (one: string, other: string) => `By points ‘${one}’ and ‘${other}’ are level.`,
  notSure: (best: string, lead: string) =>
    `By points ‘${best}’ is ahead (${lead} a match). Whether that holds here the matches do not tell.`,
  disagree: (of: { by: string; points: string; pointsLead: string; best: string; lead: string }) =>
    `Points and ${of.by} disagree: by points ‘${of.points}’ is ahead (${of.pointsLead} a match), by ${of.by} ‘${of.best}’ (${of.lead}).`,
  bonus: (name: string, own: string, other: string) =>
    `It earns ‘${name}’ in ${own} of its matches, the other in ${other}: more than its points show.`,
  winsFewer: (difference: string) => `That outweighs the matches that it wins less often (${difference}).`,
  wins: (own: string, other: string) => `It wins ${own} of its matches, the other ${other}, a tie counted half.`,
  table: 'Options by whole matches',
  option: 'Option',
  win: 'Wins',
  rankingPoints: 'Ranking points',
  score: 'Alliance’s points',
  named: (name: string) => `‘${name}’`,
  who: (of: { partners: string; opponents: string; matches: string }) =>
    `With ${of.partners} against ${of.opponents}; ${of.matches} matches of each, all on the same luck.`,
  atLevel: (level: string) => `Level of the event: ${level}.`,
  errors: '± is one standard error of the simulation, rounded up. What we do not know about the robots is not in it.',
  pointsBelow:
    'What follows is by points: what turns the answer, what is believed, the call and the worth of a piece are not computed for wins or ranking points.',
  preparing: 'Working out what the robots can do …',
  running: (done: string, of: string) => `${done} of ${of} matches of each option played …`,
  stopped: (done: string) => `Stopped after ${done} matches of each option. What is shown is what they say.`,
  stoppedEarly: 'Stopped before the first match.',
  old: 'These numbers are about what was asked before; the new ones come.',
  kept: 'This is the stored result.',
  stop: 'Stop playing',
  goOn: 'Go on playing',
  failed: 'These matches can not be played',
  explain: {
    title: { win: 'Wins ahead', rankingPoints: 'Ranking points ahead' },
    formula: {
      win: 'Each option plays the same matches: same partners, same opponents, same luck. A win counts 1, a tie ½. The lead is the mean of the differences match by match, and ± its standard error.',
      rankingPoints:
        'Each option plays the same matches: same partners, same opponents, same luck. The lead is the mean of the differences match by match, and ± its standard error. It is the sum of what results and each bonus bring.',
    },
    lead: 'Ahead',
    results: 'Results of matches (wins and ties)',
    bonus: (name: string) => `Bonus ‘${name}’`,
    matches: 'Matches of each option',
    luck: 'Luck number',
  },
  record: {
    title: 'Judged by',
    again:
      'This decision was not made by points alone. What is computed here are points; wins and ranking points are computed in its trade-off.',
  },
}
