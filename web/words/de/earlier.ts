import type { Words } from '../catalogue.ts'

export const earlier: Words['earlier'] = {
  open: 'Zählt hier eine frühere Veranstaltung?',
  title: 'Eine frühere Veranstaltung',
  intro:
    'Was Roboter auf einer früheren Veranstaltung dieser Saison taten, sagt hier etwas über sie, aber weniger als das, was sie hier tun: Roboter werden umgebaut und Teams lernen dazu. Deshalb zählt ein Match von dort nur zum Teil, und noch einmal weniger, wo der Roboter seither verändert wurde. Mit jedem Match dieser Veranstaltung verliert es an Gewicht.',
  what: 'frühere Veranstaltungen',
  trouble: 'Frühere Veranstaltungen konnten nicht geladen werden',
  none: 'Hier liegt keine andere Veranstaltung dieses Spiels. Sobald eine da ist, lässt sie sich hier wählen.',
  which: 'Veranstaltung',
  no: 'keine: nur Matches dieser Veranstaltung zählen',
  choice: (name, teams, matches) =>
    teams === 0
      ? `${name} (von Teams dieser Veranstaltung wurde nichts gesehen)`
      : `${name} (${teams} Teams in ${matches} Matches gesehen)`,
  discount: 'Ein Match von dort zählt (%)',
  discountHow: 'Üblich, ohne Quelle, sind 40 % für eine andere Veranstaltung oder einen veränderten Roboter.',
  badDiscount: (got) => `Hier muss eine ganze Zahl von 0 bis 100 stehen, „${got}“ ist keine`,
  changed: 'Teams, deren Roboter seither verändert wurde',
  changedHow: 'Nummern mit Kommas dazwischen. Ihre Matches von dort zählen noch einmal zu 40 %.',
  badChanged: (teams) => `Nicht von dieser Veranstaltung: ${teams}`,
  look: 'Ansehen, was sie ändert',
  looking: 'was die Veranstaltung ändert',
  notLooked: 'Was die Veranstaltung ändert, konnte nicht berechnet werden',
  take: 'Gelten lassen',
  takeNone: 'Keine gelten lassen',
  taken: (name) => `${name} zählt hier jetzt.`,
  takenNone: 'Jetzt zählen nur Matches dieser Veranstaltung.',
  undo: 'Zurücknehmen',
  conflict: 'Die Veranstaltung wurde inzwischen anderswo geändert. Lade die Seite neu und wähle dann.',
  lead: 'Das wählt eine Leitung.',
  caption: 'Was sie ändert: Punkte der Ziele im Teleop',
  team: 'Team',
  matches: 'Matches hier + dort',
  worth: 'Die dort zählen',
  alone: 'Ohne sie',
  together: 'Mit ihr',
  more: 'Unterschied',
  changes: (times) => (times === 1 ? 'Roboter einmal verändert' : `Roboter ${times}-mal verändert`),
  range: (mean, low, high) => `${mean} (${low} bis ${high})`,
  rangeHow:
    'In Klammern, wo die Erwartung mit 80 % liegt. Was die frühere Veranstaltung selbst von einer noch früheren nahm, kommt nicht mit.',
  counts: (name, percent, teams) =>
    `Matches von „${name}“ zählen hier zu ${percent}; sie sagen etwas über ${teams} Teams.`,
  missing:
    'Die frühere Veranstaltung, die gewählt wurde, liegt nicht hier oder gehört zu einem anderen Spiel; sie zählt nichts.',
  ofEarlier: (count) => `Eigenes Match ${count} der früheren Veranstaltung`,
}
