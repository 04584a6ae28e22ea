import type { Words } from '../catalogue.ts'

export const sideBySide: Words['sideBySide'] = {
  title: 'Teams nebeneinander',
  what: 'die Teams nebeneinander',
  trouble: 'Die Teams konnten nicht nebeneinandergestellt werden',
  choose: 'Teams nebeneinanderstellen',
  chooseHow: 'Hake zwei bis sechs Teams an.',
  choice: (team) => `Team ${team} nebeneinanderstellen`,
  show: (teams) => (teams < 2 ? 'Nebeneinander' : `${teams} Teams nebeneinander`),
  full: 'Mehr als sechs Teams passen nicht nebeneinander.',
  add: 'Team hinzufügen',
  remove: (team) => `Team ${team} herausnehmen`,
  tooFew: 'Füge ein zweites Team hinzu',
  tooFewHow:
    'Zwei bis sechs Teams können nebeneinanderstehen. Welche, steht in der Adresse dieser Seite, sodass man sie weitergeben kann.',
  notHere: (teams) => `Nicht bei dieser Veranstaltung, also weggelassen: ${teams}.`,
  total: 'Punkte eines ganzen Matches',
  totalHow:
    'Ziele in der Fahrzeit, Abschluss und Autonomphase zusammen, in einem Match, das der Roboter zu Ende spielt.',
  better: (chance, team) => `Wahrscheinlichkeit, besser als ${team} zu sein: ${chance}`,
  quantity: (name) => `${name}: Teams mit ihren Bereichen, das beste zuerst`,
  scale: (from, to) => `Alle Balken von ${from} bis ${to}`,
  how: 'Die Teams stehen nach ihrem Mittel, das beste zuerst, alle Balken einer Größe auf einer Skala: im Balken liegt der Erwartungswert mit 80 %, in der dünnen Linie mit 95 %. Die Wahrscheinlichkeit, besser als das nächste zu sein, wird in Ziehungen dessen gezählt, was geglaubt wird; was alle Teams der Veranstaltung teilen, ist in jeder für alle gleich.',
  strips: 'Ihre letzten Matches untereinander',
  latest: 'die letzten drei',
  notWatched: 'noch nicht beobachtet',
}
