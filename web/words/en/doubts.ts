/** Records that do not fit the officials or each other. */
export const doubts = {
  title: 'Doubts',
  what: 'the doubts',
  trouble: 'The doubts could not be worked out',
  intro:
    'Records that do not fit the official results or each other, largest first. They count as they are until a lead has looked.',
  none: 'Nothing to doubt',
  noneHow: 'All records fit the official results and each other as well as records of this event usually do.',
  look: (records: number) => (records === 1 ? 'Look at the record' : `Look at the ${records} records`),
  differs: (teams: string) => `The records of ${teams} and the official result are further apart than usual.`,
  swapped: (scout: string, team: string, goals: string) =>
    `${scout}’s record of ${team} fits the official result once ${goals} are taken for each other.`,
  wrongRobot: (scout: string, team: string, fits: string) => `${scout}’s record of ${team} fits ${fits} much better.`,
  disagree: (team: string, goal: string, low: string, high: string) =>
    `Two records of ${team} say ${low} and ${high} pieces at ${goal}.`,
  swaps: (scout: string, goals: string, records: number) =>
    `${scout} seems to take ${goals} for each other, by ${records} records together.`,
  tooFew: (scout: string, pieces: string, goal: string) =>
    `${scout} counts ${pieces} pieces too few at ${goal} in each record.`,
  tooMany: (scout: string, pieces: string, goal: string) =>
    `${scout} counts ${pieces} pieces too many at ${goal} in each record.`,
  evidence: 'Officials and scouts side by side',
  category: 'What',
  piecesAt: (goal: string) => `Pieces at ${goal}`,
  categories: { autonomous: 'Points in autonomous', finishes: 'Points of finishes' },
  official: 'Officials',
  scouted: 'Scouts',
  usual: 'Times the usual difference',
  times: (often: string) => `${often} ×`,
  without: {
    ask: (records: number) =>
      records === 1 ? 'What would be said without the record' : `What would be said without the ${records} records`,
    what: 'what would be said without it',
    trouble: 'What would be said without it could not be worked out',
    with: 'With',
    without: 'Without',
    team: (team: string, now: number, then: number) =>
      `Team ${team}: from ${now} own matches with, from ${then} without`,
    matches: (shown: number, all: number) =>
      shown === all ? 'Coming matches' : `The next ${shown} of ${all} coming matches`,
    noneComing: 'No match of these robots is still to come.',
    wins: (side: string) => `${side}: chance to win`,
    score: (side: string) => `${side}: expected score`,
    how: (teams: string) =>
      `‘Without’ leaves the record out of everything that is believed of ${teams} and of the event; a match without another record of the robot is then one that nobody saw. Both forecasts play 4,000 matches with the same luck; a tie counts as half a win. Leaving out is not done here: a lead corrects the record, or lets another count.`,
  },
}
