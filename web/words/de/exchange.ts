import type { Words } from '../catalogue.ts'

export const exchange: Words['exchange'] = {
  onlyLeads: 'Dateien sind für die Leitung',
  onlyLeadsHelp: 'Spitznamen stehen darin. Frag die Leitung nach dem, was du brauchst.',
  out: 'Hinaus als Datei',
  caution:
    'In beiden Dateien stehen Spitznamen der Scouts, und viele von ihnen sind minderjährig: Gib eine Datei nur Menschen, die sie sehen dürfen, und lösche Kopien, die niemand braucht.',
  archive: 'Die ganze Veranstaltung',
  archiveHelp:
    'Eine JSON-Datei mit allem: Spiel, Zeitplan, Ergebnisse, wer wen beobachtet, alle Aufzeichnungen mit Fotos und Berichtigungen, was beiseitegelegt wurde, Proben, Vorhersagen, wie sie gezeigt wurden, was vor Matches abgemacht wurde, und die Auswahl. Ein anderer Server nimmt sie unverändert auf; eine Prüfsumme zeigt Schäden.',
  saveArchive: 'Die ganze Veranstaltung sichern',
  tables: 'Tabellen',
  tablesHelp:
    'Eine Zip-Datei mit CSV-Tabellen für Tabellenprogramme und Statistik: Teams, Matches, Ergebnisse im neuesten Stand und alle Aufzeichnungen, mit einer Beschreibung jeder Spalte. Es fehlen das Spiel, wer wen beobachtet, was beiseitegelegt wurde, die Wahl zwischen Aufzeichnungen und Vorhersagen.',
  photos: 'Mit Fotos',
  photosHelp: 'Als Base64 in einer eigenen Tabelle.',
  noPhotosHelp: 'Fotos kommen nicht zurück, wenn diese Datei hereingeholt wird.',
  mark: 'Mit Byte-Order-Marks',
  markHelp: 'Für Tabellenprogramme, die ‚Ã¼‘ statt ‚ü‘ zeigen.',
  saveTables: 'Die Tabellen sichern',
  handed: (name) => `${name} liegt bei deinem Browser.`,
  bring: 'Eine Veranstaltung hereinholen',
  bringHelp:
    'Aus der Datei einer ganzen Veranstaltung oder ihrer Tabellen, wie ‚Dateien‘ in einer Veranstaltung sie sichert. Was sie ändern würde, wird zuerst gezeigt. Was schon hier ist, bleibt: Was die Datei anders sagt, wird aufgezählt, und Aufzeichnungen mit anderem Inhalt werden beiseitegelegt.',
  input: 'Datei mit einer Veranstaltung',
  choose: 'Datei wählen',
  tooLarge: (megabytes) => `Die Datei ist größer als die ${megabytes} MB, die der Server liest.`,
  looking: (name) => `was ${name} ändern würde`,
  applying: (name) => `${name} in diesen Server`,
  would: (name, event) => `Was ${name} in ${event} ändern würde`,
  brought: (event) => `${event} ist hereingeholt`,
  nothing: 'Nichts käme dazu: Alles ist schon hier oder bleibt draußen.',
  back: 'Die Veranstaltung war hier entfernt; mit dem Hereinholen steht sie wieder in der Liste.',
  table: 'Was neu ist und was schon hier ist, nach Teilen',
  part: 'Teil',
  parts: {
    event: 'Die Veranstaltung selbst',
    rules: 'Fassungen des Spiels',
    matches: 'Matches',
    results: 'Ergebnisse',
    assignments: 'Wer wen beobachtet',
    records: 'Aufzeichnungen',
    apart: 'Beiseitegelegtes',
    choices: 'Wahl zwischen Aufzeichnungen',
    drills: 'Proben',
    forecasts: 'Vorhersagen',
    plans: 'Absprachen',
    selection: 'Zeilen der Auswahl',
    people: 'Spitznamen',
  },
  added: 'Dazugekommen',
  wouldAdd: 'Neu',
  already: 'Schon hier',
  conflicts: (count) =>
    count === 1
      ? 'Eine Aufzeichnung hat eine Kennung, die hier mit anderem Inhalt vergeben ist: Beide bleiben, und die Leitung entscheidet auf der Tafel.'
      : `${count} Aufzeichnungen haben Kennungen, die hier mit anderem Inhalt vergeben sind: Beide bleiben, und die Leitung entscheidet auf der Tafel.`,
  toBoard: 'Zur Tafel',
  differs: (count) =>
    count === 1
      ? 'Eines ist hier anders als in der Datei und bleibt, wie es hier ist:'
      : `${count} Dinge sind hier anders als in der Datei und bleiben, wie sie hier sind:`,
  different: (part, what, detail) => `${part}${what === '' ? '' : `: ${what}`}${detail === '' ? '' : ` (${detail})`}`,
  revision: (revision) => `Fassung ${revision}`,
  more: (count) => `und ${count} weitere`,
  stays: 'Was hereingeholt ist, bleibt: Aufzeichnungen werden nie gelöscht.',
  apply: 'Hereinholen',
  leave: 'Lassen, wie es ist',
  close: 'Schließen',
  open: (event) => `${event} öffnen`,
  refused: (name) => `Von ${name} wurde nichts genommen:`,
  line: (table, line) => `${table}, Zeile ${line}`,
  cell: (table, line, column) => `${table}, Zeile ${line}, Spalte ${column}`,
  fault: (place, what) => (place === '' ? `${what}.` : `${place}: ${what}.`),
}
