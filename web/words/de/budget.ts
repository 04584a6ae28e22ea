import type { Words } from '../catalogue.ts'

export const budget: Words['budget'] = {
  title: 'Budget: Masse, Kosten, Stunden, fertig bis',
  present: 'Für diesen Entwurf wird ein Budget geführt',
  help: 'Wird gezeigt und mit den Grenzen des Spiels verglichen. Es ändert von selbst keine Punkte: Was Masse oder Stunden an Tempo und Übung kosten, steht in den Zahlen des Antriebs und der Schritte.',
  mass: 'Masse',
  massHelp: 'So, wie die Regeln wiegen',
  cost: 'Kosten',
  costHelp: 'In eurer Währung, so, wie die Regeln zählen',
  hours: 'Arbeit, ihn zu bauen',
  hoursUnit: 'h',
  readyBy: 'Fertig bis',
  noDate: 'Es ist kein Datum angegeben.',
  ready: (day, hours) => `${hours} Arbeit, fertig bis ${day}.`,
  work: (hours) => `${hours} h`,
  left: (value, limit, rest) => `${value} von ${limit}; ${rest} übrig.`,
  exact: (value) => `${value}, genau die Grenze.`,
  over: (value, limit, by) => `${value} sind ${by} über der Grenze des Spiels von ${limit}.`,
  noLimits:
    'Das Spiel hat keine Grenzen für Masse und Kosten. Trag sie beim Spiel ein, wo es heißt, dass Roboter Grenzen haben.',
  bar: (what, words) => `${what}: ${words}`,
}
