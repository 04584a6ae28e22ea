import type { Words } from '../catalogue.ts'

export const shell: Words['shell'] = {
  noScreen: 'Diese Seite gibt es nicht',
  skip: 'Zum Inhalt springen',
  screens: 'Seiten',
  silence:
    'Der Server antwortet nicht. Was du tippst, bleibt in diesem Browser und lässt sich sichern, sobald er wieder da ist.',
  colophon:
    'Punkte sind erwartete Punkte eines Roboters in einem Match; jede Zahl lässt sich aufklappen. Gerechnet wird in deinem Browser.',
  places: {
    start: 'Start',
    games: 'Spiele',
    quickSheet: 'Schnellblatt',
    designs: 'Entwürfe',
    tradeOffs: 'Abwägungen',
    decisions: 'Entscheidungen',
  },
}
