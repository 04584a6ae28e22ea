import type { Words } from '../catalogue.ts'

export const lineup: Words['lineup'] = {
  title: 'Aufstellung',
  help: 'Welcher unserer drei Roboter macht was? Hake an, was jeder darf und wen er decken darf; die Aufstellungen, die das zulässt, werden mit demselben Glück gespielt, die bessere Hälfte geht weiter, und die letzten zwei spielen 20000 Matches.',
  role: 'Seine Aufgabe',
  free: 'wird gesucht',
  settled: 'steht fest: wie seine Spielweise sagt',
  goals: 'Darf werten an',
  finishes: 'Darf abschließen an',
  marks: 'Darf decken',
  nobody: 'niemanden',
  from: 'Ab Restzeit',
  until: 'Bis Restzeit',
  emptyWindow: 'Die Restzeit läuft ab: Er deckt von der größeren Zahl bis zur kleineren.',
  badWindow: (robot) => `${robot}: Sag, zwischen welchen Restzeiten er decken darf.`,
  marksHelp:
    'Decken heißt, bei einem Gegner zu bleiben und seine Fahrten zu bremsen, so sehr, wie der Entwurf sagt, mit Fouls obendrein. Währenddessen bringt der Roboter keine Punkte. Welcher Kontakt erlaubt ist, sagen die Regeln der Veranstaltung.',
  slowsNobody:
    'Nach seinem Entwurf bremst dieser Roboter niemanden: Decken kostet seine Punkte und bringt nichts. Ändern lässt sich das im Entwurf, bei der Abwehr.',
  skips: 'Seine Spielweise geht bis zum Schlusston, also ohne Abschluss.',
  rivals: 'Die Gegner',
  rivalsHelp:
    'Sie kommen so, wie die Aufstellung oben sagt. Wo du das nicht weißt, füge andere hinzu, und wie wahrscheinlich jede ist.',
  setting: (number) => `Fall ${number}`,
  ofSetup: 'wie oben aufgestellt',
  weight: (number) => `Gewicht von Fall ${number}`,
  addSetting: 'Noch einen Fall hinzufügen',
  removeSetting: (number) => `Fall ${number} entfernen`,
  objective: 'Am besten nach',
  objectives: { win: 'Siegchance', rankingPoints: 'Ranglistenpunkte' },
  search: 'Die beste Aufstellung suchen',
  stop: 'Suche anhalten',
  many: (count, closed) =>
    closed
      ? `${count} Aufstellungen: Gespielt werden die 64, die nach Plänen ohne Verkehr die besten sind.`
      : `${count} ${count === '1' ? 'Aufstellung ist' : 'Aufstellungen sind'} zu spielen.`,
  incomplete: (number) => `Fall ${number} ist nicht vollständig: Wähle für alle drei Positionen eine Spielweise.`,
  badWeight: 'Ein Gewicht ist eine Zahl von 0 bis 1000.',
  noWeight: 'Mindestens ein Fall braucht ein Gewicht über 0.',
  progress: 'Fortschritt der Suche',
  preparing: 'Was die Roboter in jeder Aufgabe können, wird ausgerechnet …',
  running: (share, left) =>
    left === null ? `${share} der Matches gespielt …` : `${share} der Matches gespielt, noch ${left} Aufstellungen …`,
  stopped: (left, matches) =>
    `Angehalten, als noch ${left} Aufstellungen übrig waren. Gezeigt sind die zwei, die nach je ${matches} Matches vorn lagen.`,
  stoppedEarly: 'Vor dem Ende der ersten Runde angehalten.',
  failed: 'Diese Aufstellungen können nicht gespielt werden',
  old: 'Das gilt für das, was davor gefragt war.',
  found: (objective, value) => `${objective} mit der besten Aufstellung: ${value}`,
  table: 'Die besten Aufstellungen, Roboter für Roboter',
  robot: 'Roboter',
  best: 'Beste',
  runnerUp: 'Zweitbeste',
  nextYet: 'Bisher nächste',
  either: (names) => names.join(' oder '),
  noGoal: 'kein Ziel',
  noFinish: 'kein Abschluss',
  defends: (whom, from, until) => `deckt ${whom} von ${from} s bis ${until} s Restzeit`,
  loses: (difference) => `Die zweitbeste dagegen: ${difference} je Match, mit demselben Glück.`,
  even: (difference) =>
    `Die zweitbeste dagegen: ${difference} je Match. Diese Matches unterscheiden die zwei nicht: Nimm die, der du mehr traust.`,
  onlyOne: 'Es gibt nur diese eine: Zu wählen war nichts.',
  worst: (number, value, rivals) => `Am schlechtesten steht sie gegen Fall ${number} (${rivals}): ${value}.`,
  counted: (candidates, played, matches, luck) =>
    `${candidates} Aufstellungen, davon ${played} gespielt; je ${matches} Matches der letzten zwei, Glückszahl ${luck}.`,
  errors: '± ist ein Standardfehler der Simulation, aufgerundet; ein Unentschieden zählt als halber Sieg.',
  take: 'In die Aufstellung oben übernehmen',
  takeHelp: 'Wo es dafür noch keine Spielweise gibt, wird eine neue gesichert.',
  taken: 'Übernommen.',
  takenWith: (names) => `Übernommen; dafür gesichert: ${names.map((name) => `„${name}“`).join(', ')}.`,
  back: 'Wieder zurücknehmen',
  notTaken: 'Das konnte nicht übernommen werden',
}
