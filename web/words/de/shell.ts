import type { Words } from '../catalogue.ts'

export const shell: Words['shell'] = {
  noScreen: 'Diese Seite gibt es nicht',
  toStart: 'Zur Startseite',
  skip: 'Zum Inhalt springen',
  screens: 'Seiten',
  silence:
    'Der Server antwortet nicht. Was du tippst, bleibt in diesem Browser und lässt sich sichern, sobald er wieder da ist.',
  unreachable:
    'Der Server antwortet nicht. Was du getippt hast, bleibt in diesem Browser; versuch es noch einmal, sobald er wieder da ist.',
  colophon:
    'Punkte sind erwartete Punkte in einem Match: eines Roboters allein, auf der Seite des Matches von Allianzen. Jede Zahl lässt sich aufklappen. Gerechnet wird in deinem Browser.',
  /** Under what belongs to an event. */
  colophonOfEvent:
    'Punkte und Stücke gelten für ein Match. Zahlen eines Roboters lassen sich öffnen und sagen, woraus sie bestehen, bis zu den Aufzeichnungen. Auf dem Server gerechnet.',
  places: {
    start: 'Start',
    games: 'Spiele',
    quickSheet: 'Schnellblatt',
    designs: 'Entwürfe',
    tradeOffs: 'Abwägungen',
    decisions: 'Entscheidungen',
    match: 'Match',
    event: 'Event',
  },
  settings: 'Einstellungen und Hilfe',
  help: 'Hilfe',
  parts: 'Bauteile',
  close: 'Schließen',
  again: 'Noch einmal versuchen',
  loading: (what) => `Wird geladen: ${what} …`,
  theScreen: 'die Seite',
  broken: 'Diese Seite ließ sich nicht zeichnen',
  safe: 'Was du gesichert hast, ist sicher, und ungesicherte Änderungen bleiben in diesem Browser.',
  nameMissing: 'Bitte gib einen Namen an.',
  copyOf: (name) => `${name}, Kopie`,
  firstWay: 'Alles, was er kann',
}
