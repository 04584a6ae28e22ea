/** Columns of a schedule's table, as our own files name them. */
export const scheduleColumns = [
  'phase',
  'number',
  'play',
  'time',
  'red_1',
  'red_2',
  'red_3',
  'blue_1',
  'blue_2',
  'blue_3',
  'surrogates',
  'absent',
  'disqualified',
] as const
export type ScheduleColumn = (typeof scheduleColumns)[number]

/** Without these no schedule can be read. */
export const neededForSchedule: readonly ScheduleColumn[] = [
  'number',
  'red_1',
  'red_2',
  'red_3',
  'blue_1',
  'blue_2',
  'blue_3',
]

const sideColumns = ['total', 'autonomous', 'goals', 'finishes', 'from_fouls', 'bonuses'] as const

/** Columns of a table of results; besides these, `red_pieces_<goal>` and `blue_pieces_<goal>` for each goal of the game. */
export const resultColumns = [
  'phase',
  'number',
  'play',
  ...(['red', 'blue'] as const).flatMap((alliance) => sideColumns.map((column) => `${alliance}_${column}` as const)),
] as const
export type ResultColumn = (typeof resultColumns)[number]

export const neededForResults: readonly ResultColumn[] = ['number', 'red_total', 'blue_total']

/** Which column of a table holds what: our name → place, from 0. */
export type Columns = { readonly [column: string]: number | undefined }

/** Words that headings of tables use for the same. */
const alike: readonly (readonly [RegExp, string])[] = [
  [/^(match|match_number|no|nr|nummer|spiel)$/, 'number'],
  [/^(phase|round|runde)$/, 'phase'],
  [/^(replay|wiederholung)$/, 'play'],
  [/^(when|start|zeit|uhrzeit)$/, 'time'],
  [/^(rot|red)_?(\d.*|\D.*)$/, 'red_'],
  [/^(blau|blue)_?(\d.*|\D.*)$/, 'blue_'],
]

/** German for what follows the alliance in a heading. */
const german: { readonly [word: string]: string } = {
  gesamt: 'total',
  summe: 'total',
  punkte: 'total',
  autonom: 'autonomous',
  ziele: 'goals',
  abschluss: 'finishes',
  aus_fouls: 'from_fouls',
  boni: 'bonuses',
}

const plain = (heading: string): string =>
  heading
    .trim()
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '_')
    .replace(/^_|_$/g, '')

function ours(heading: string): string {
  const name = plain(heading)
  for (const [pattern, column] of alike) {
    const found = pattern.exec(name)
    if (!found) continue
    if (!column.endsWith('_')) return column
    const rest = found[2]!.replace(/^_/, '')
    return column + (german[rest] ?? rest)
  }
  return name
}

/** The columns that a table's headings name, each at its first place. */
export function matchColumns(headings: readonly string[], known: readonly string[]): { [column: string]: number } {
  const wanted = new Map(known.map((column) => [plain(column), column]))
  const columns: { [column: string]: number } = {}
  headings.forEach((heading, place) => {
    const column = wanted.get(ours(heading))
    if (column !== undefined && !Object.hasOwn(columns, column)) columns[column] = place
  })
  return columns
}

/** Lines in which the headings are looked for: above them may stand a title, or nothing. */
const searched = 10

/**
 * Where a table's headings stand and which sign separates its cells: whichever of a tab, a semicolon and a comma makes the most
 * columns known in one of the first lines. `line` counts from 0; null where no line names a single one.
 */
export function findHeadings(text: string, known: readonly string[]): { line: number | null; delimiter: string } {
  const lines = text.split(/\r?\n/, searched)
  let best = { line: null as number | null, delimiter: delimiterOf(lines), found: 0 }
  for (const delimiter of delimiters)
    lines.forEach((line, index) => {
      const found = Object.keys(matchColumns(line.split(delimiter), known)).length
      if (found > best.found) best = { line: index, delimiter, found }
    })
  return { line: best.line, delimiter: best.delimiter }
}

/** Tabs as a spreadsheet pastes, semicolons as countries with decimal commas have them, or commas. */
const delimiters = ['\t', ';', ',']

const delimiterOf = (lines: readonly string[]): string => {
  const first = lines.find((line) => line.trim() !== '') ?? ''
  return delimiters.find((sign) => first.includes(sign)) ?? ','
}
