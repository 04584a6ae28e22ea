import type { Words } from '../catalogue.ts'

export const after: Words['after'] = {
  title: 'Nach der Veranstaltung',
  what: 'Vorhergesagtes und Gesehenes',
  trouble: 'Vorhergesagtes und Gesehenes konnte nicht zusammengestellt werden',
  team: 'Team',
  design: 'Sein Entwurf',
  views: { report: 'Ganz', slide: 'Eine Folie', publish: 'Für andere Teams' },
  viewsLabel: 'Wie man es ansieht',
  none: 'Von diesem Team ist noch kein Match gespielt oder vorhergesagt',
  noneHow:
    'Sobald es Ergebnisse gibt, oder Vorhersagen, die vor einem Match aufgehoben wurden, stehen sie hier nebeneinander.',
  questions: 'Was die Belege fragen',
  questionsHow:
    'Was gegen uns lief, steht zuerst. Gefragt wird, wo der Zufall allein selten so viel brächte; es sagt, wo man hinsehen kann, nicht was zu tun ist.',
  noQuestions: 'Nichts sticht heraus: Gesehenes passt zu Gesagtem, soweit so wenige Matches das zeigen.',
  ask: {
    slowLeg: (leg, seconds, trips) =>
      `${leg} dauerte ${seconds} länger als im Entwurf, über ${trips} Fahrten. Welche Stufe davon ist langsamer als gezeichnet?`,
    slowerTrips: (seconds, trips) =>
      `Eine Fahrt dauerte ${seconds} länger als im Entwurf, über ${trips} Fahrten. Wo wartet der Roboter?`,
    quickerTrips: (seconds, trips) =>
      `Eine Fahrt dauerte ${seconds} weniger als im Entwurf, über ${trips} Fahrten. War der Entwurf zu vorsichtig, und welcher Plan folgt aus den neuen Zeiten?`,
    stopped: (matches, of) =>
      `Der Roboter blieb in ${matches} von ${of} beobachteten Matches endgültig stehen. Was ging jedes Mal kaputt, und war es dasselbe?`,
    absent: (matches) =>
      `Der Roboter kam zu ${matches === 1 ? 'einem Match' : `${matches} Matches`} nicht. Was hielt ihn in der Box?`,
    standing: (seconds, matches) =>
      `Er stand im Mittel ${seconds} je Match, in ${matches} Matches. Hing er fest, fehlte die Verbindung, oder wartete er auf einen Partner?`,
    defended: (seconds, matches) =>
      `Er wurde im Mittel ${seconds} je Match verteidigt, in ${matches} Matches. Gibt es einen anderen Weg oder eine andere Quelle?`,
    misses: (goal, missed, tried) =>
      `Bei ${goal} gingen ${missed} von ${tried} Versuchen daneben. Von wo wurde es versucht, und lohnt für die näheren der Weg?`,
    belowDecision: (decision, expected, seen) =>
      `„${decision}“ erwartete ${expected} Punkte je Match; nach dem Gesehenen sind es ${seen}. Welche Annahme hielt nicht?`,
    aboveDecision: (decision, expected, seen) =>
      `„${decision}“ erwartete ${expected} Punkte je Match; nach dem Gesehenen sind es ${seen}. Welche Annahme war zu vorsichtig?`,
    fewerWins: (came, expected) =>
      `Wir gewannen ${came} Matches, wo Vorhersagen ${expected} erwarteten. Was sahen sie nicht: Partner, Verteidigung oder unseren eigenen Roboter?`,
    moreWins: (came, expected) =>
      `Wir gewannen ${came} Matches, wo Vorhersagen ${expected} erwarteten. Glück, oder etwas, das sie nicht sahen?`,
    scoreLess: (points, matches) =>
      `Unsere Allianzen holten ${points} Punkte weniger als vorhergesagt, über ${matches} Matches. Wessen Teil fehlte?`,
    scoreMore: (points, matches) =>
      `Unsere Allianzen holten ${points} Punkte mehr als vorhergesagt, über ${matches} Matches. Was lief besser als vorher?`,
  },
  collectAt: (source) => `Holen bei ${source}`,
  scoreAt: (goal) => `Ablegen bei ${goal}`,
  predicted: 'Vorhergesagt',
  seen: 'Gesehen',
  changed: 'Geändert',
  ours: 'Unsere Matches',
  oursHow:
    'Chancen und Punkte sind die vor dem Match aufgehobenen; in Klammern, wo die Punkte mit 80 % liegen sollten.',
  match: 'Match',
  chance: 'Chance auf den Sieg',
  score: 'Unsere Punkte, vorhergesagt',
  came: 'Ergebnis',
  range: (mean, low, high) => `${mean} (${low} bis ${high})`,
  result: (ours, theirs) => `${ours} : ${theirs}`,
  notForecast: 'keine aufgehoben',
  waiting: 'kommt noch',
  counted: (inside, of) => `${inside} von ${of} Punktzahlen lagen, wo sie mit 80 % liegen sollten.`,
  wins: (came, of, expected, low, high) =>
    `${came} von ${of} gewonnen; Vorhersagen erwarteten ${expected}, mit 80 % zwischen ${low} und ${high}.`,
  tie: 'Unentschieden zählt halb.',
  rank: (rank, of, won, tied, lost) =>
    `Rang ${rank} von ${of}: ${won} gewonnen, ${tied} unentschieden, ${lost} verloren.`,
  noRank: 'Noch nicht in der Rangliste.',
  time: 'Wo unser Roboter Zeit verlor',
  timeHow: (watched) =>
    `Sekunden des Teleop je Match, aus ${watched === 1 ? 'einem beobachteten Match' : `${watched} beobachteten Matches`}. Teile können sich überlappen: Wer verteidigt wird, braucht auch länger für eine Fahrt.`,
  noTime: 'Kein Match unseres Roboters wurde beobachtet; über seine Zeit lässt sich nichts sagen.',
  loss: 'Was',
  seconds: 'Je Match',
  inMatches: 'In Matches',
  losses: {
    slower: 'Fahrten länger als im Entwurf',
    stopped: 'Blieb endgültig stehen',
    standing: 'Stand und fuhr weiter',
    defended: 'Wurde verteidigt',
  },
  quicker: 'Fahrten kürzer als im Entwurf',
  trips: (seen, model, trips) =>
    `Eine Fahrt dauerte auf dem Feld ${seen} und im Entwurf ${model}, über ${trips} Fahrten.`,
  noField: 'Es wurde nichts gestoppt, das sich neben den Entwurf stellen ließe.',
  toField: 'Abschnitt für Abschnitt',
  toForecasts: 'Alle Vorhersagen',
  decisions: 'Was Entscheidungen sagten',
  noDecisions: 'Zu diesem Spiel ist keine Entscheidung festgehalten.',
  decided: (name, day) => `${name}, ${day}`,
  expected: (way, mean, low, high) =>
    `Gewählt: ${way}, ${mean} Punkte je Match erwartet, in 8 von 10 Matches zwischen ${low} und ${high}.`,
  seenPoints: (mean, low, high) =>
    `Nach dem Gesehenen: ${mean} Punkte je Match; die Erwartung liegt mit 80 % zwischen ${low} und ${high}.`,
  otherDesign: 'Sie wählte einen anderen Entwurf als den, der hier angesehen wird.',
  check: 'Auf dem Feld anzusehen',
  checkExpected: 'Damals erwartet',
  wouldChange: 'Sie nannte, was sie ändern würde',
  changes: 'Was geändert wurde',
  noChanges: 'Es wurde keine Änderung unseres Roboters festgehalten.',
  changeAfter: (match) => `nach ${match}`,
  changeBefore: 'vor dem ersten Match',
  change: (when, note) => `Der Roboter wurde ${when} verändert: ${note}`,
  changeNoNote: (when) => `Der Roboter wurde ${when} verändert; wie, hat niemand notiert.`,
  copy: (name, shifts) =>
    shifts === 1
      ? `Im Entwurf „${name}“ hat eine Stufe ihre Zeit vom Feld.`
      : `Im Entwurf „${name}“ haben ${shifts} Stufen ihre Zeiten vom Feld.`,
  lessons: 'Was wir mitnehmen',
  lessonsHow:
    'Eine Zeile je Punkt; sie stehen auf der Folie. Eine Leitung schreibt sie, die Fassung für andere Teams enthält sie nicht.',
  saveLessons: 'Speichern',
  saved: 'Gespeichert.',
  undo: 'Zurücknehmen',
  conflict:
    'Die Veranstaltung wurde inzwischen anderswo geändert. Lade die Seite neu und speichere dann: Das Getippte bleibt hier.',
  tooLong: (got) => `Höchstens 2.000 Zeichen, das sind ${got}`,
  carried: 'Was mitgeht',
  carriedHow:
    'Auf der nächsten Veranstaltung dieses Spiels bietet die Seite „Was das Feld sagt“ an, Spiele von hier mit einem Abschlag zählen zu lassen.',
  toEstimates: 'Was das Feld sagt',
  print: 'Drucken',
  slideOf: (event, team) => `${event}: Team ${team}`,
  more: (count) => `und ${count} mehr auf der ganzen Seite`,
  nothingChanged: 'Noch nichts festgehalten.',
  slideSource: (records, forecasts) =>
    `Aus ${records} beobachteten Matches unseres Roboters und ${forecasts} Vorhersagen, die vor ihren Matches aufgehoben wurden.`,
  publish: {
    title: 'Für andere Teams',
    intro:
      'Was man weitergeben kann: amtliche Punktzahlen, die Rangliste, gezählte Stücke und was wir über uns selbst sagen. Nicht darin: Schätzungen, Vorhersagen oder Auswahllisten anderer, Zweifel, Notizen, Reihenfolgen nach Fahren oder Verteidigen und Namen von Menschen.',
    look: 'Sieh es durch, bevor du es weitergibst: Gezähltes kann falsch sein, und was draußen ist, bleibt draußen.',
    file: 'Als Datei sichern',
    handed: (name) => `${name} wurde dem Browser übergeben.`,
    what: 'die Fassung für andere Teams',
    trouble: 'Die Fassung für andere Teams konnte nicht gemacht werden',
    ranking: 'Rangliste nach amtlichen Ergebnissen',
    rank: 'Rang',
    played: 'Gespielt',
    record: 'Gewonnen – unentschieden – verloren',
    matches: 'Amtliche Punktzahlen',
    red: 'Rot',
    blue: 'Blau',
    total: 'Rot : Blau',
    open: 'kein Ergebnis',
    countedTitle: 'Gezählte Stücke je Match, autonom + Teleop',
    countedHow: 'Mittel über die Matches, in denen jemand den Roboter beobachtete.',
    countedMatches: 'Beobachtete Matches',
    own: 'Was wir über uns selbst sagen',
    ownTrips: (field, model, trips) =>
      `Eine Fahrt von uns dauerte auf dem Feld ${field}, über ${trips} Fahrten; unser Entwurf sagte ${model}.`,
    ownForecasts: (won, matches, expected) =>
      `Unsere Vorhersagen unserer eigenen Matches erwarteten ${expected} Siege in ${matches}; es kamen ${won}.`,
    noOwn: 'Von unseren Matches wurde nichts gestoppt oder vorhergesagt.',
  },
}
