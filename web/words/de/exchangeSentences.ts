import type { exchangeSentences } from '../../../src/model/event/archive/sentences.ts'
import type { Words } from '../catalogue.ts'

/** What is wrong with files of an event, in German. */
export const ofExchange: Pick<Words['problems'], keyof typeof exchangeSentences> = {
  damagedFile: () => 'Die Datei ist beschädigt: Ihr Inhalt hat nicht die Prüfsumme, die sie nennt',
  otherPlan: ({ id }) => `Absprache ${id}: Ihre Kennung ist nicht die Prüfsumme ihres Inhalts`,
  otherForecast: ({ id }) => `Vorhersage ${id}: Ihre Kennung ist nicht die Prüfsumme ihres Inhalts`,
  otherHash: ({ id }) => `Aufzeichnung ${id}: Ihre Prüfsumme ist nicht die ihres Inhalts`,
  otherEventInFile: ({ id, event, inside }) =>
    `${id} gehört zur Veranstaltung „${inside}“, und die Datei ist von „${event}“`,
  twiceInFile: ({ id }) => `${id} steht zweimal da`,
  revisionOrder: ({ revision }) => `Die Fassung ${revision} steht hinter einer neueren`,
  noMatchInFile: ({ id }) => `In der Datei gibt es kein Match „${id}“`,
  noZip: () => 'Das ist keine Zip-Datei, oder sie ist beschädigt',
  zipTooLarge: ({ megabytes }) => `Was in der Datei steckt, ist größer als ${megabytes} MB`,
  noTable: ({ table }) => `In der Datei fehlt ${table}.csv`,
  openQuotes: () => 'Anführungszeichen werden nicht geschlossen',
  noColumn: ({ column }) => `Die Spalte ${column} fehlt`,
  strangeColumn: ({ column }) => `Eine Spalte ${column} ist nicht bekannt oder steht zweimal da`,
  otherCells: ({ got, wanted }) => `Die Zeile hat ${got} statt ${wanted} Zellen`,
  cellNeeded: () => 'Die Zelle ist leer und darf es nicht sein',
  cellNoNumber: ({ got }) => `„${got}“ ist keine Zahl mit Punkt`,
  cellNoWhole: ({ got }) => `„${got}“ ist keine ganze Zahl`,
  cellNoBoolean: ({ got }) => `„${got}“ ist weder true noch false`,
  cellNoList: ({ got }) => `„${got}“ ist keine JSON-Liste von Texten`,
  nothingOfIt: ({ table, id }) => `${table} hat keine Zeile „${id}“`,
  otherCount: ({ table, got, wanted }) => `Dazu sollten ${wanted} Zeilen in ${table} stehen, es sind ${got}`,
  matchLinesDiffer: ({ column }) => `Die Zeilen eines Matches sagen Verschiedenes in ${column}`,
  notThreeEach: ({ alliance }) => `Das Match hat nicht genau die Roboter 1, 2 und 3 von ${alliance}`,
  oneSide: () => 'Das Ergebnis hat nicht eine Zeile je Allianz',
  oneEvent: () => 'Es muss genau eine Veranstaltung sein',
  gameFirst: ({ game }) =>
    `Das Spiel „${game}“ ist nicht hier, und Tabellen enthalten es nicht: Hol zuerst seine Datei herein, oder die Veranstaltung als Ganzes`,
}
