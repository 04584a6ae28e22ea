/** Readings of the rules, and what a change of the rules turns. */
export const rulesChange = {
  title: 'What the rules change',
  link: 'What a change of the rules turns',
  linkOf: (game: string) => `${game}: what a change of the rules turns`,
  intro:
    'Every stored decision of this game is computed again under another revision of its rules, with the robots as they were then.',
  loading: 'the rules',
  notLoaded: 'The rules could not be loaded',
  against: 'Compute under',
  newest: (revision: number) => `the newest rules, revision ${revision}`,
  revision: (revision: number, note: string) => `revision ${revision}, ${note}`,
  reading: (name: string, rule: string, revision: number) =>
    `‘${name}’${rule ? ` (${rule})` : ''}, revision ${revision}`,
  none: 'No decision of this game is stored yet.',
  caption: 'Stored decisions under these rules',
  decision: 'Decision',
  before: 'Best then',
  after: 'Best under these rules',
  difference: 'Lead',
  verdict: 'Does it flip?',
  flips: 'flips',
  stays: 'stays',
  level: 'the two best are level',
  notComputed: 'can not be computed',
  computing: 'computing …',
  chosenNow: (name: string, behind: string) => `Chosen was ‘${name}’: now ${behind} points behind.`,
  summary: (flipped: number, all: number) =>
    flipped === 0
      ? all === 1
        ? 'The one decision stands.'
        : `None of the ${all} decisions flips.`
      : all === 1
        ? 'The one decision flips.'
        : `${flipped} of ${all} decisions ${flipped === 1 ? 'flips' : 'flip'}.`,
  under: (game: string) => `Computed anew under the rules of ‘${game}’ that are chosen above.`,
  same: 'These are the rules that it was decided under.',
  readings: {
    title: 'Readings of the rules',
    how: 'A reading is a revision of the game with a name: ‘if 4.2.1 means that robots may wait there’. Change the game as the reading has it and press ‘Save as a reading’ there; or name a revision here that is kept already.',
    none: 'No reading is named yet.',
    name: 'If … means …',
    nameNeeded: 'Please say what the rule would mean.',
    rule: 'Rule',
    revision: 'Revision of the game',
    make: 'Name this reading',
    remove: 'Remove',
    removeOf: (name: string) => `Remove the reading ‘${name}’`,
    removed: (name: string) => `The reading ‘${name}’ is removed.`,
    back: 'Take it back',
    line: (rule: string, revision: number) => `${rule ? `${rule}, ` : ''}revision ${revision}`,
    edit: 'Change the game',
    sheets: 'Quick sheets are ranked under each reading.',
  },
}
