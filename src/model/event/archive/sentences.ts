/** What is said of files with a whole event, in English. Lines and columns are those of its tables. */
export const exchangeSentences = {
  // An archive
  damagedFile: (_: object) => 'The file is damaged: what is in it does not have the hash that it names',
  otherHash: (of: { id: string }) => `Record ${of.id}: its hash is not that of its content`,
  otherPlan: (of: { id: string }) => `Plan ${of.id}: its id is not the hash of its content`,
  otherForecast: (of: { id: string }) => `Forecast ${of.id}: its id is not the hash of its content`,
  otherEventInFile: (of: { id: string; event: string; inside: string }) =>
    `${of.id} belongs to the event “${of.inside}”, and the file is about “${of.event}”`,
  twiceInFile: (of: { id: string }) => `${of.id} is there twice`,
  revisionOrder: (of: { revision: number }) => `Revision ${of.revision} stands behind a newer one`,
  noMatchInFile: (of: { id: string }) => `There is no match “${of.id}” in the file`,
  // Tables
  noZip: (_: object) => 'This is no zip file, or it is damaged',
  zipTooLarge: (of: { megabytes: number }) => `What is in the file is larger than ${of.megabytes} MB`,
  noTable: (of: { table: string }) => `The file has no ${of.table}.csv`,
  openQuotes: (_: object) => 'Quotation marks do not close',
  noColumn: (of: { column: string }) => `The column ${of.column} is missing`,
  strangeColumn: (of: { column: string }) => `There is a column ${of.column} that is not known, or is there twice`,
  otherCells: (of: { got: number; wanted: number }) => `The line has ${of.got} cells instead of ${of.wanted}`,
  cellNeeded: (_: object) => 'The cell is empty, and must not be',
  cellNoNumber: (of: { got: string }) => `“${of.got}” is not a number with a point`,
  cellNoWhole: (of: { got: string }) => `“${of.got}” is not a whole number`,
  cellNoBoolean: (of: { got: string }) => `“${of.got}” is neither true nor false`,
  cellNoList: (of: { got: string }) => `“${of.got}” is not a JSON list of texts`,
  nothingOfIt: (of: { table: string; id: string }) => `${of.table} has no line “${of.id}”`,
  otherCount: (of: { table: string; got: number; wanted: number }) =>
    `It should have ${of.wanted} lines in ${of.table}, which has ${of.got}`,
  matchLinesDiffer: (of: { column: string }) => `The lines of one match say different things in ${of.column}`,
  notThreeEach: (of: { alliance: string }) => `The match has not exactly the robots 1, 2 and 3 of ${of.alliance}`,
  oneSide: (_: object) => 'The result has not one line of each alliance',
  oneEvent: (_: object) => 'There must be exactly one event',
  gameFirst: (of: { game: string }) =>
    `The game “${of.game}” is not here, and tables do not hold it: bring its file in first, or the event as an archive`,
} as const

type Sentences = typeof exchangeSentences

/** One of these sentences by its name, with its parts. */
export type ExchangeSaid = {
  [Code in keyof Sentences]: { code: Code; parts: Parameters<Sentences[Code]>[0] }
}[keyof Sentences]

/** In English, with its name and parts. */
export function tellExchange(said: ExchangeSaid): { message: string; said: ExchangeSaid } {
  const sentence = exchangeSentences[said.code] as (of: object) => string
  return { message: sentence(said.parts), said }
}
