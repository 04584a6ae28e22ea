import type { ContentPart } from '../../../src/model/event/archive/types.ts'

const parts: Record<ContentPart, string> = {
  event: 'The event itself',
  rules: 'Revisions of the game',
  matches: 'Matches',
  results: 'Results',
  assignments: 'Who watches whom',
  records: 'Records',
  apart: 'Rows kept apart',
  choices: 'Choices between records',
  drills: 'Rehearsals',
  forecasts: 'Forecasts',
  plans: 'Agreed plans',
  selection: 'Lines of the selection',
  people: 'Nicknames',
}

/** An event as files, out and in. */
export const exchange = {
  onlyLeads: 'Files are for leads',
  onlyLeadsHelp: 'Nicknames stand in them. Ask a lead for what you need.',
  out: 'Out as a file',
  caution:
    'Nicknames of scouts stand in both files, and many of them are minors: give a file only to people who may see them, and delete copies that nobody needs.',
  archive: 'The whole event',
  archiveHelp:
    'One JSON file with everything: the game, schedule, results, who watches whom, all records with photos and corrections, what was kept apart, rehearsals, forecasts as they were shown, what was agreed before matches, and the selection. Another server takes it in unchanged; a check sum shows damage.',
  saveArchive: 'Save the whole event',
  tables: 'Tables',
  tablesHelp:
    'One zip file of CSV tables for spreadsheets and statistics: teams, matches, results in their newest state and all records, with a description of each column. Left out are the game, who watches whom, what was kept apart, choices between records and forecasts.',
  photos: 'With photos',
  photosHelp: 'As Base64 in a table of their own.',
  noPhotosHelp: 'Photos do not come back when this file is brought in.',
  mark: 'With byte-order marks',
  markHelp: 'For spreadsheets that show ‘Ã¼’ in place of ‘ü’.',
  saveTables: 'Save the tables',
  handed: (name: string) => `${name} is with your browser.`,
  bring: 'Bring an event in',
  bringHelp:
    'From the file of a whole event or of its tables, as ‘Files’ in an event saves them. What it would change is shown first. What is here already stays: what the file says otherwise is listed, and records of other content are kept apart.',
  input: 'File with an event',
  choose: 'Choose a file',
  tooLarge: (megabytes: number) => `The file is larger than the ${megabytes} MB that the server reads.`,
  looking: (name: string) => `what ${name} would change`,
  applying: (name: string) => `${name} into this server`,
  would: (name: string, event: string) => `What ${name} would change in ${event}`,
  brought: (event: string) => `${event} was brought in`,
  nothing: 'Nothing would be added: all of it is here already, or stays out.',
  back: 'The event had been removed here; bringing it in puts it back into the list.',
  table: 'What is new and what is here, by part',
  part: 'Part',
  parts,
  added: 'Added',
  wouldAdd: 'New',
  already: 'Here already',
  conflicts: (count: number) =>
    count === 1
      ? 'One record has an id that is taken by other content here: both are kept, and a lead decides on the board.'
      : `${count} records have ids that are taken by other content here: both are kept, and a lead decides on the board.`,
  toBoard: 'To the board',
  differs: (count: number) =>
    count === 1
      ? 'One thing is otherwise here than in the file, and stays as it is here:'
      : `${count} things are otherwise here than in the file, and stay as they are here:`,
  different: (part: string, what: string, detail: string) =>
    `${part}${what === '' ? '' : `: ${what}`}${detail === '' ? '' : ` (${detail})`}`,
  revision: (revision: string) => `revision ${revision}`,
  more: (count: number) => `and ${count} more`,
  stays: 'What is brought in stays: records are never deleted.',
  apply: 'Bring it in',
  leave: 'Leave it as it is',
  close: 'Close',
  open: (event: string) => `Open ${event}`,
  refused: (name: string) => `Nothing of ${name} was taken:`,
  line: (table: string, line: number) => `${table}, line ${line}`,
  cell: (table: string, line: number, column: string) => `${table}, line ${line}, column ${column}`,
  fault: (place: string, what: string) => (place === '' ? `${what}.` : `${place}: ${what}.`),
}
