import type { DocumentKind } from '../../../src/model/documents/records.ts'
import type { storedSentences } from '../../../src/model/documents/refusals.ts'
import type { Comparison, Noun, shapeSentences } from '../../../src/model/documents/shapes.ts'
import type { Words } from '../catalogue.ts'

/** What the fields of documents are called where a sentence about their form names them. */
const names: { readonly [key: string]: string } = {
  absent: 'Fehlt',
  acceleration: 'Beschleunigung',
  after: 'Wartet auf',
  at: 'Zeitpunkt',
  atLeast: 'Mindestens',
  auto: 'Autonome Zeit',
  capacity: 'Fassungsvermögen',
  clearance: 'Abstand zu Hindernissen',
  cost: 'Kosten',
  count: 'Anzahl',
  deceleration: 'Bremsung',
  duration: 'Dauer',
  endgame: 'Endphase',
  every: 'Alle',
  footprint: 'Grundfläche',
  format: 'Format',
  from: 'Von',
  high: 'Hoch',
  hours: 'Stunden',
  id: 'Kennung',
  label: 'Bezeichnung',
  leaves: 'Verlässt den Start',
  length: 'Länge',
  likely: 'Üblich',
  load: 'Ladung',
  loss: 'Niederlage',
  low: 'Niedrig',
  major: 'Schweres Foul',
  mass: 'Masse',
  median: 'Median',
  minor: 'Leichtes Foul',
  name: 'Name',
  note: 'Notiz',
  outline: 'Umriss',
  pace: 'Tempo',
  pause: 'Pause',
  points: 'Punkte',
  rankingPoints: 'Ranglistenpunkte',
  reason: 'Grund',
  retry: 'Neuer Versuch',
  seconds: 'Sekunden',
  size: 'Größe',
  slots: 'Plätze',
  slowdown: 'Verlangsamung',
  spots: 'Standpunkte',
  spread: 'Streuung',
  stages: 'Schritte',
  start: 'Startplatz',
  stock: 'Vorrat',
  stops: 'Bleibt liegen',
  success: 'Erfolg',
  teleop: 'Gefahrene Zeit',
  tie: 'Unentschieden',
  topSpeed: 'Höchstgeschwindigkeit',
  until: 'Bis',
  width: 'Breite',
  win: 'Sieg',
}

/** A field as a sentence begins with it; one without a German name by its key, and null for the document as a whole. */
function fieldName(name: string | null): string {
  if (name === null) return 'Das Dokument'
  const [key = '', ...entries] = name.split(/(?=\[)/)
  return `„${Object.hasOwn(names, key) ? names[key] : key}${entries.join('')}“`
}

const nouns: Record<Noun, string> = {
  'a number': 'eine Zahl',
  'a whole number': 'eine ganze Zahl',
  text: 'ein Text',
  'true or false': 'wahr oder falsch (true, false)',
  'a list': 'eine Liste',
  'an object': 'ein Objekt',
  null: 'null',
}

const comparisons: Record<Comparison, string> = {
  'more than': 'mehr als',
  'less than': 'weniger als',
  'at least': 'mindestens',
  'at most': 'höchstens',
}

const sayGot = (got: string | { text: string } | { list: number }): string => {
  if (typeof got === 'string') return got === 'object' ? 'ein Objekt' : got
  return 'list' in got ? `eine Liste mit ${got.list}` : got.text
}

/** What a contract finds in a field. */
export const shapes: Pick<Words['problems'], keyof typeof shapeSentences> = {
  missing: ({ name }) => `${fieldName(name)} fehlt`,
  wrongType: ({ name, noun, got }) => `${fieldName(name)} muss ${nouns[noun] ?? noun} sein, nicht ${sayGot(got)}`,
  infinite: ({ name, got }) => `${fieldName(name)} muss eine endliche Zahl sein, nicht ${got}`,
  outOfRange: ({ name, comparison, bound, got }) =>
    `${fieldName(name)} muss ${comparisons[comparison]} ${bound} sein, nicht ${sayGot(got)}`,
  entries: ({ name, comparison, entries, got }) =>
    `${fieldName(name)} muss ${comparisons[comparison]} ${entries} ${entries === '1' ? 'Eintrag' : 'Einträge'} haben, nicht ${got}`,
  characters: ({ name, comparison, characters, got }) =>
    `${fieldName(name)} muss ${comparisons[comparison]} ${characters} Zeichen haben, nicht ${got}`,
  emptyText: ({ name }) => `${fieldName(name)} darf nicht leer sein`,
  unknownFields: ({ keys }) => `${keys.map((key) => `„${key}“`).join(', ')} ist hier kein bekanntes Feld`,
  noneOf: ({ name, allowed, got }) => `${fieldName(name)} muss ${allowed.join(' oder ')} sein, nicht ${sayGot(got)}`,
  noForm: ({ name, got }) => `${fieldName(name)} hat keine der Formen, die hier erlaubt sind: ${sayGot(got)}`,
  notAnId: ({ got }) => `${sayGot(got)} kann hier keine Kennung sein`,
  otherwiseWritten: ({ name, got }) => `${fieldName(name)} ist anders geschrieben als erwartet: ${sayGot(got)}`,
  notMultiple: ({ name, divisor, got }) =>
    `${fieldName(name)} muss ein Vielfaches von ${divisor} sein, nicht ${sayGot(got)}`,
  notTenths: ({ name, got }) => `${fieldName(name)} muss ein Vielfaches von 0,1 s sein, nicht ${sayGot(got)}`,
  takenId: ({ got }) => `${sayGot(got)} kann keine Kennung sein: Das Wort braucht das Programm selbst`,
  controlInId: ({ got }) => `Eine Kennung darf keine Steuerzeichen enthalten: ${sayGot(got)}`,
  otherFormat: ({ got }) => `Das Format muss 1 sein, nur das ist hier bekannt, nicht ${sayGot(got)}`,
  likelyBelowLow: ({ low, likely }) => `„Üblich“ muss mindestens „Niedrig“ (${low}) sein, nicht ${likely}`,
  highBelowLikely: ({ likely, high }) => `„Hoch“ muss mindestens „Üblich“ (${likely}) sein, nicht ${high}`,
  spreadTooLarge: ({ median, spread, most }) =>
    `Die Streuung muss bei einem Median von ${median} kleiner sein, nicht ${spread}: Eine von tausend Zeiten wäre länger als ${most} s`,
  spreadOutside: ({ median, spread, low, high }) =>
    `Die Streuung muss bei einem Median von ${median} kleiner sein, nicht ${spread}: Einer von tausend Werten läge außerhalb von ${low} bis ${high}`,
  highNotAbove: ({ low, high }) => `„Hoch“ muss mehr als „Niedrig“ (${low}) sein, nicht ${high}`,
  shotMissing: () => 'Für die Erholung eines Rads wird ein Schuss gebraucht',
  freeCurrent: ({ bound, got }) =>
    `Der Leerlaufstrom muss höchstens die Hälfte des Blockierstroms (${bound} A) sein, nicht ${got}`,
  rod: ({ bound, got }) => `Die Stange muss höchstens 0,95-mal so dick wie die Bohrung (${bound} m) sein, nicht ${got}`,
  pressure: ({ bound, got }) => `Die Drücke müssen steigen: Auf ${bound} folgt ${got}`,
  flow: ({ bound, got }) => `Der Durchfluss kann mit dem Druck nicht steigen: Auf ${bound} folgt ${got}`,
  lowBelowRoom: ({ bound, got }) => `Der niedrige Druck muss über dem des Raums (${bound}) liegen, nicht bei ${got}`,
  lowAboveWorking: ({ bound, got }) =>
    `Der niedrige Druck muss höchstens der Arbeitsdruck (${bound}) sein, nicht ${got}`,
  onAboveOff: ({ bound, got }) => `Der Einschaltdruck muss höchstens der Ausschaltdruck (${bound}) sein, nicht ${got}`,
  notADate: ({ got }) => `Ein Datum wird wie 2031-02-28 geschrieben, nicht wie ${sayGot(got)}`,
  notAMoment: ({ got }) =>
    `Ein Zeitpunkt wird wie 2031-02-28 oder 2031-02-28T14:05Z geschrieben, nicht wie ${sayGot(got)}`,
  notAMomentWithOffset: ({ got }) => `Ein Zeitpunkt wird wie 2031-02-28T14:05Z geschrieben, nicht wie ${sayGot(got)}`,
  notTeams: ({ got }) => `Teams sind zwei bis sechs, mit Kommas dazwischen, nicht ${sayGot(got)}`,
  notATeam: ({ got }) => `Ein Team hat höchstens 12 Buchstaben, Ziffern oder Bindestriche, nicht ${sayGot(got)}`,
  notAUuid: ({ got }) => `Die Kennung einer Aufzeichnung ist eine UUID in kleinen Buchstaben, nicht ${sayGot(got)}`,
  notBase64: ({ got }) => `Die Daten eines Fotos sind in Base64 geschrieben, nicht wie ${sayGot(got)}`,
}

const kinds: Record<DocumentKind, string> = {
  game: 'kein Spiel',
  design: 'keinen Entwurf',
  option: 'keine Spielweise',
  comparison: 'keine Abwägung',
  decision: 'keine Entscheidung',
  quickSheet: 'kein Schnellblatt',
  reading: 'keine Lesart',
  timing: 'keine Zeitmessung',
  part: 'kein Bauteil',
  event: 'keine Veranstaltung',
}

/** What is refused where documents are kept and rounds of guesses are held. */
export const stored: Pick<Words['problems'], keyof typeof storedSentences> = {
  noDocument: ({ kind, id, revision }) =>
    `Es gibt ${kinds[kind]} mit der Kennung „${id}“${revision === null ? '' : ` in Fassung ${revision}`}`,
  inputTwice: ({ id }) => `Es gibt zwei Unbekannte mit der Kennung „${id}“`,
  noInput: ({ id }) => `Es gibt keine Unbekannte mit der Kennung „${id}“`,
  fieldMissing: () =>
    'Siege und Ranglistenpunkte hängen davon ab, wer sonst spielt: Nenne zwei Partner und drei Gegner',
  overriddenTwice: ({ id }) => `Die eigene Zahl „${id}“ betrifft etwas, wofür es schon eine gibt`,
  notCompared: ({ thing, id }) =>
    `${thing === 'option' ? 'Die Spielweise' : 'Der Entwurf'} „${id}“ ist nicht unter den verglichenen`,
  chosenElsewhere: ({ option }) => `Die gewählte Spielweise „${option}“ ist nicht unter denen der Aufzeichnung`,
  earlierItself: () => 'Eine Veranstaltung kann nicht ihre eigene frühere sein',
  earlierOtherGame: ({ event }) =>
    `Bei der früheren Veranstaltung „${event}“ gilt ein anderes Spiel, ihre Zahlen sagen hier also nichts`,
  otherHead: ({ field, inside, asked }) =>
    `Im Dokument steht ${field === 'id' ? 'als Kennung' : 'als Name'} „${inside}“, in der Anfrage „${asked}“`,
  noRound: ({ code }) => `Es gibt keine Schätzrunde mit dem Code „${code}“`,
  noWayOnSheet: ({ sheet, way }) => `Das Schnellblatt „${sheet}“ hat keine Spielweise mit der Kennung „${way}“`,
  noFinishToGuess: ({ way }) => `Die Spielweise „${way}“ hat keinen Abschluss zum Schätzen`,
  roundsFull: ({ most }) =>
    `Das Schnellblatt hat schon ${most} Runden und nimmt keine mehr auf: Sichere eine Kopie davon`,
  roundClosed: () => 'Die Runde ist geschlossen: Ihre Schätzungen sind zu sehen, neue kommen nicht hinzu',
  devicesFull: ({ most }) => `Die Runde hat Schätzungen von ${most} Geräten und nimmt keine mehr auf`,
  correctionsFull: ({ most }) =>
    `Dieses Gerät hat seine Schätzung schon ${most}-mal geändert und kann es nicht noch einmal`,
  notACode: ({ got }) => `Ein Code hat sechs Buchstaben und Ziffern, etwa K7M3PX, nicht ${sayGot(got)}`,
  notASecret: () => 'Was ein Gerät oder Browser für sich ausdenkt, sind 16 bis 64 kleine Buchstaben und Ziffern',
  closedBeforeOpened: ({ code }) => `Die Runde „${code}“ ist geschlossen, bevor sie geöffnet ist`,
  codeTwice: ({ code }) => `Es gibt zwei Runden mit dem Code „${code}“`,
  notYourRound: () =>
    'Die Runde wurde in einem anderen Browser eröffnet: Ohne dessen Schlüssel wird sie nur geschlossen, wenn es ausdrücklich verlangt wird',
}
