import type { Words } from '../catalogue.ts'

export const explain: Words['explain'] = {
  option: {
    title: (option) => `Erwartete Punkte: ${option}`,
    result: (mean, low, high) => `${mean} Punkte je Match; 8 von 10 Matches zwischen ${low} und ${high}`,
    formula:
      'Der Plan gibt für jede Punktzahl genau an, wie wahrscheinlich sie ist. Der Mittelwert ist jede Punktzahl mal ihrer Wahrscheinlichkeit, zusammengezählt; die Streuung ist die derselben Wahrscheinlichkeiten von Match zu Match.',
    mean: 'Mittelwert',
    deviation: 'Standardabweichung',
    low: '1 von 10 Matches hat weniger als',
    middle: 'Die Hälfte der Matches hat weniger als',
    high: '9 von 10 Matches haben weniger als',
  },
  robot: {
    robot: 'Roboter',
    topSpeed: 'Höchstgeschwindigkeit',
    acceleration: 'Beschleunigung, Bremsen',
    form: 'Streuung der Form',
    finish: 'Abschluss',
  },
  finish: {
    always: (time) => `immer, wenn noch ${time} bleiben`,
    skip: 'weggelassen',
    best: 'wenn er sich lohnt',
  },
  plan: {
    formula:
      'In jedem Augenblick tut der Roboter, was für die verbleibende Zeit am meisten wert ist: für jede mögliche Fahrt die Punkte, die sie bringt, mal ihrer Chance, dazu das, was die Zeit danach noch wert ist. Die Teile unten sind, was das im Mittel bringt.',
    autonomous: 'Autonome Zeit',
    each: (pieces, award) => `${pieces} Stücke in der gefahrenen Zeit × ${award} ${award === '1' ? 'Punkt' : 'Punkte'}`,
    held: (pieces, seconds, award) =>
      `${pieces} Stücke in der gefahrenen Zeit × bis zu ${seconds} s gehalten × ${award} ${award === '1' ? 'Punkt' : 'Punkte'} je Sekunde`,
    tried: (share) => `versucht in ${share} der Matches`,
    adjusted: 'Von Hand angepasst',
    total: 'Erwartete Punkte',
  },
  lead: {
    title: 'Der Vorsprung',
    result: (lead) => `${lead} Punkte je Match`,
    formula:
      'Die erwarteten Punkte der besten Möglichkeit weniger die der nächsten, jede so gut gespielt, wie ihr Roboter kann, jede Zahl so, wie sie in den Dokumenten steht.',
    less: (option) => `weniger ${option}`,
    between: (low, high) => `8 von 10 Matches zwischen ${low} und ${high}`,
    total: 'Vorsprung',
  },
  chance: {
    title: 'Chance, die bessere Wahl zu sein',
    none: 'nicht berechnet',
    formula:
      'Jede Unbekannte wird 2.000-mal aus dem gezogen, was ihr über sie für möglich haltet, alle Möglichkeiten mit denselben Ziehungen; gezählt wird, wie oft jede die meisten erwarteten Punkte hat.',
    regret: (points) =>
      `${points} Punkte je Match gehen im Mittel verloren, wenn sie gewählt wird und eine andere besser gewesen wäre`,
    believed: (low, high, likely) => `${low} bis ${high}, üblich ${likely}`,
  },
  openedShort: 'wie das zustande kam',
  parts: 'Teile',
  inputs: 'Eingaben',
  result: 'Ergebnis',
  total: 'Summe',
  opened: 'Wie das zustande kam',
  openedOf: (what) => `Wie „${what}“ zustande kam`,
  kept: (record, revision) => `Aufbewahrt mit dem Entscheidungsbogen „${record}“, Fassung ${revision}.`,
}
