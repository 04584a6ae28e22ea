/** An earlier event whose matches count here. */
export const earlier = {
  open: 'Does an earlier event count here?',
  title: 'An earlier event',
  intro:
    'What robots did at an earlier event of this season says something about them here, but less than what they do here: robots are rebuilt and teams learn. So a match there counts only in part, and once more by less where the robot was changed since. As matches of this event come in, they outweigh it.',
  what: 'earlier events',
  trouble: 'Earlier events could not be loaded',
  none: 'No other event of this game is stored here. Once one is, it can be chosen here.',
  which: 'Event',
  no: 'none: only matches of this event count',
  choice: (name: string, teams: number, matches: number) =>
    teams === 0
      ? `${name} (nothing seen of teams of this event)`
      : `${name} (${teams} teams seen in ${matches} matches)`,
  discount: 'A match there counts (%)',
  discountHow: 'Common practice without a source is 40 % for another event or a changed robot.',
  badDiscount: (got: string) => `A whole number from 0 to 100 is needed, ‘${got}’ is none`,
  changed: 'Teams whose robot was changed since',
  changedHow: 'Numbers with commas between. Their matches there count by 40 % once more.',
  badChanged: (teams: string) => `Not of this event: ${teams}`,
  look: 'See what it changes',
  looking: 'what the event changes',
  notLooked: 'What the event changes could not be worked out',
  take: 'Let it count',
  takeNone: 'Let none count',
  taken: (name: string) => `${name} counts here now.`,
  takenNone: 'Only matches of this event count now.',
  undo: 'Take back',
  conflict: 'The event was changed elsewhere meanwhile. Load the page anew, then choose.',
  lead: 'A lead chooses.',
  caption: 'What it changes: points of goals in teleop',
  team: 'Team',
  matches: 'Matches here + there',
  worth: 'Those there count',
  alone: 'Without it',
  together: 'With it',
  more: 'Difference',
  changes: (times: number) => (times === 1 ? 'robot changed once' : `robot changed ${times} times`),
  range: (mean: string, low: string, high: string) => `${mean} (${low} to ${high})`,
  rangeHow:
    'In brackets where the expectation lies with 80 %. What the earlier event itself took from a still earlier one is not taken along.',
  counts: (name: string, percent: string, teams: number) =>
    `Matches of ‘${name}’ count here by ${percent}; they say something about ${teams} teams.`,
  missing: 'The earlier event that was chosen is not stored here or of another game; it counts for nothing.',
  ofEarlier: (count: number) => `Own match ${count} of the earlier event`,
}
