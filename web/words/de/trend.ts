import type { Words } from '../catalogue.ts'

export const trend: Words['trend'] = {
  title: 'Match für Match',
  axis: 'Versuchte Stücke in einem ganzen Match',
  how: 'Punkte sind eigene Matches, die Linie ist, was nach jedem geglaubt wurde, das Band, worin es mit 80 % lag. Das Übliche der Veranstaltung ist das von heute.',
  point: (match, value, mean, low, high) => `${match}: ${value}; danach geglaubt ${mean}, zwischen ${low} und ${high}`,
  picture: (team) => `Versuchte Stücke von Team ${team}, Match für Match`,
  match: 'Match',
  seen: 'Im Match',
  believed: 'Danach geglaubt',
  between: '80 %',
  few: 'Sobald zwei Matches beobachtet sind, steht hier, wie sich das Team entwickelt.',
  halfLife: {
    title: 'Wie bald Matches vergessen werden',
    open: 'Wie bald werden Matches vergessen?',
    what: 'was für jede Halbwertszeit spricht',
    trouble: 'Was für jede Halbwertszeit spricht, konnte nicht berechnet werden',
    intro:
      'Roboter werden besser oder gehen kaputt. Mit einer Halbwertszeit zählen ältere Matches eines Roboters weniger, um den Preis von mehr Zufall in den Zahlen. Für jede wurde gerechnet, wie gut sie die Stücke jedes nächsten Matches der Veranstaltung vorhergesagt hätte.',
    choice: 'Halbwertszeit',
    all: 'alle Matches gleich',
    after: (matches) => `${matches} eigene Matches`,
    gain: 'Gewinn',
    unsure:
      'Der Gewinn ist der gegenüber allen Matches gleich. Ein Gewinn unter seinem doppelten Fehler kann Zufall sein.',
    score: 'Log-Wertung',
    points: (gain, error) => `${gain} ± ${error}`,
    now: 'gilt jetzt',
    take: 'Gelten lassen',
    taken: (name) => `Schätzungen dieser Veranstaltung: ${name}.`,
    undo: 'Zurücknehmen',
    conflict: 'Die Veranstaltung wurde inzwischen anderswo geändert. Lade die Seite neu und wähle dann.',
    lead: 'Das wählt eine Leitung.',
  },
}
