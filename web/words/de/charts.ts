import type { Words } from '../catalogue.ts'

export const charts: Words['charts'] = {
  table: 'Die Zahlen als Tabelle',
  tableOf: (title) => `${title}: Tabelle`,
  dots: (rows) => `Punkte in 20 gleich wahrscheinlichen Matches. ${rows}`,
  dotRow: (name, mean) => `${name}: Mittelwert ${mean}`,
  below: (count, of, points) => `in ${count} von ${of} Matches weniger als ${points} Punkte`,
  lines: (axis, where) => `Erwartete Punkte über ${axis}: ${where}`,
  changesAt: (places) => `die beste Möglichkeit wechselt bei ${places}`,
  and: ' und ',
  changesNowhere: 'die beste Möglichkeit wechselt in diesem Bereich nicht',
  likely: 'am ehesten',
  swing: (lead, bars) => `Ausschlag des Vorsprungs, jetzt ${lead} Punkte: ${bars}`,
  swingBar: (name, low, high) => `${name} von ${low} bis ${high}`,
  policy:
    'Was als Nächstes zu tun ist, über der verbleibenden Zeit und von jedem Platz; die Tabelle sagt dasselbe in Worten',
  timeLeft: 's übrig',
  difference: (count, mean) =>
    `Punkte voraus in 20 gleich wahrscheinlichen Paaren von Matches: in ${count} zurück, Mittelwert ${mean}`,
  leave:
    'Wann der Aufbruch zum Abschluss am besten ist, über der verbleibenden Zeit und von jedem Platz; die Tabelle sagt dasselbe',
  leaveRow: (from, latest) => `Aufbruch ab ${from}, spätestens ${latest}`,
  call: 'Ruf',
  map: (x, y, where) => `Beste Möglichkeit über ${x} nach rechts und ${y} nach oben: ${where}`,
  worth: (lines) => `Was ein Spielstück mehr wert ist, über der verbleibenden Zeit: ${lines}`,
  worthLine: (name, most) => `${name}, höchstens ${most} Punkte`,
}
