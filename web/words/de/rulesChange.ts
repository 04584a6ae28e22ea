import type { Words } from '../catalogue.ts'

export const rulesChange: Words['rulesChange'] = {
  title: 'Was die Regeln ändern',
  link: 'Was eine Regeländerung kippt',
  linkOf: (game) => `${game}: was eine Regeländerung kippt`,
  intro:
    'Jede gesicherte Entscheidung dieses Spiels wird unter einer anderen Fassung seiner Regeln neu gerechnet, mit den Robotern, wie sie damals waren.',
  loading: 'die Regeln',
  notLoaded: 'Die Regeln ließen sich nicht laden',
  against: 'Rechnen unter',
  newest: (revision) => `den neuesten Regeln, Fassung ${revision}`,
  revision: (revision, note) => `Fassung ${revision}, ${note}`,
  reading: (name, rule, revision) => `„${name}“${rule ? ` (${rule})` : ''}, Fassung ${revision}`,
  none: 'Zu diesem Spiel ist noch keine Entscheidung gesichert.',
  caption: 'Gesicherte Entscheidungen unter diesen Regeln',
  decision: 'Entscheidung',
  before: 'Damals das Beste',
  after: 'Das Beste unter diesen Regeln',
  difference: 'Vorsprung',
  verdict: 'Kippt sie?',
  flips: 'kippt',
  stays: 'bleibt',
  level: 'die beiden besten liegen gleichauf',
  notComputed: 'nicht berechenbar',
  computing: 'rechnet …',
  chosenNow: (name, behind) => `Gewählt war „${name}“: jetzt ${behind} Punkte zurück.`,
  summary: (flipped, all) =>
    flipped === 0
      ? all === 1
        ? 'Die eine Entscheidung hält.'
        : `Keine der ${all} Entscheidungen kippt.`
      : all === 1
        ? 'Die eine Entscheidung kippt.'
        : `${flipped} von ${all} Entscheidungen ${flipped === 1 ? 'kippt' : 'kippen'}.`,
  under: (game) => `Neu gerechnet unter den Regeln von „${game}“, die oben gewählt sind.`,
  same: 'Unter diesen Regeln wurde sie getroffen.',
  readings: {
    title: 'Lesarten der Regeln',
    how: 'Eine Lesart ist eine Fassung des Spiels mit einem Namen: „wenn 4.2.1 heißt, dass Roboter dort warten dürfen“. Ändere das Spiel nach der Lesart und drücke dort „Als Lesart sichern“; oder benenne hier eine Fassung, die es schon gibt.',
    none: 'Noch keine Lesart ist benannt.',
    name: 'Wenn … heißt …',
    nameNeeded: 'Bitte schreib, was die Regel heißen würde.',
    rule: 'Regel',
    revision: 'Fassung des Spiels',
    make: 'Diese Lesart benennen',
    remove: 'Entfernen',
    removeOf: (name) => `Die Lesart „${name}“ entfernen`,
    removed: (name) => `Die Lesart „${name}“ ist entfernt.`,
    back: 'Zurückholen',
    line: (rule, revision) => `${rule ? `${rule}, ` : ''}Fassung ${revision}`,
    edit: 'Das Spiel ändern',
    sheets: 'Schnellblätter werden unter jeder Lesart gereiht.',
  },
}
