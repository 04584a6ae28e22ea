import type { Words } from '../catalogue.ts'

export const forecasts: Words['forecasts'] = {
  title: 'Wie weit den Vorhersagen zu trauen ist',
  what: 'die Bilanz der Vorhersagen',
  trouble: 'Die Bilanz der Vorhersagen konnte nicht geladen werden',
  none: 'Noch ist keine Vorhersage aufbewahrt',
  noneHow:
    'Wer die Vorhersage eines kommenden Matches ansieht, bewahrt sie auf, wie sie gezeigt wurde. Sobald Ergebnisse da sind, sagt diese Seite, wie oft Vorhersagen eintrafen und ob ihre Chancen und Bereiche stimmen.',
  unscored: 'Noch hat kein vorhergesagtes Match ein Ergebnis',
  unscoredHow: (matches) =>
    `${matches === 1 ? 'Ein Match hat' : `${matches} Matches haben`} eine Vorhersage. Mit dem ersten Ergebnis steht hier, was daraus wurde.`,
  toForecasts: 'Zu den kommenden Matches',
  make: 'Die kommenden Matches des Tages vorhersagen',
  makeHow:
    'Jede Vorhersage wird nach dem jetzigen Stand aufbewahrt. Eine spätere tritt an ihre Stelle, solange das Match kein Ergebnis hat.',
  making: (done, all) => `Vorhersagen: ${done} von ${all} fertig.`,
  stop: 'Anhalten',
  stopped: (done) =>
    done === 1 ? 'Angehalten; eine Vorhersage ist aufbewahrt.' : `Angehalten; ${done} Vorhersagen sind aufbewahrt.`,
  made: (done) => (done === 1 ? 'Eine Vorhersage ist aufbewahrt.' : `${done} Vorhersagen sind aufbewahrt.`),
  allMade: 'Alle kommenden Matches des Tages haben schon eine Vorhersage nach dem jetzigen Stand.',
  noMake: 'Die Vorhersagen konnten nicht gemacht werden',
  called: (called, chance, came) =>
    called === 1
      ? `Von einem Match, das mit ${chance} oder mehr angesagt war, ${came === 1 ? 'traf es ein' : 'traf keines ein'}.`
      : `Von ${called} Matches, die mit ${chance} oder mehr angesagt waren, trafen ${came} ein.`,
  calledAll: (called, came) =>
    called === 1
      ? `Im einzigen bisher beurteilten Match hat die Seite mit der größeren Chance ${came === 1 ? 'gewonnen' : 'nicht gewonnen'}.`
      : `In ${came} von ${called} Matches gewann die Seite mit der größeren Chance.`,
  expected: (expected, low, high) =>
    `Wenn die Chancen stimmen, sind es im Mittel ${expected} und ${low === high ? `fast immer ${low}` : `fast immer ${low} bis ${high}`}`,
  verdicts: {
    fits: 'das passt.',
    bold: 'es sind also weniger: Die Vorhersagen waren zu sicher, oder es war Pech, wie es einmal in vierzig Fällen vorkommt.',
    cautious:
      'es sind also mehr: Die Vorhersagen waren zu vorsichtig, oder es war Glück, wie es einmal in vierzig Fällen vorkommt.',
  },
  few: 'Bei so wenigen Matches sagt das noch wenig.',
  selection: (judged, played) =>
    `Beurteilt sind ${judged} von ${played} Matches mit Ergebnis: die, von denen vorher eine Vorhersage aufbewahrt wurde.`,
  calibration: 'Chancen und was eintraf',
  calibrationHow:
    'Die Linie sagt, wie oft die Seite mit der größeren Chance gewann (ein Unentschieden zählt halb), so zusammengefasst, dass sie nie fällt. Auf der Diagonale stimmen die Chancen. Im getönten Band erklärt der Zufall allein, was abweicht (90 %).',
  calibrationTold: (points) => `Wie oft die wahrscheinlichere Seite gewann, nach ihrer Chance: ${points}`,
  pointTold: (chance, came, low, high) => `${chance}: ${came} (Band ${low} bis ${high})`,
  chance: 'Chance der wahrscheinlicheren Seite',
  came: 'Wie oft sie gewann',
  bandLow: 'Band von',
  bandHigh: 'Band bis',
  matches: 'Matches',
  pit: 'Wo die Punktestände in ihren Vorhersagen lagen',
  pitHow: (low, high) =>
    `Stimmen die Vorhersagen, ist jede Klasse gleich wahrscheinlich und hat ${low} bis ${high} Punktestände (90 %). Hohe Enden: zu sicher. Hohe Mitte: zu vorsichtig. Mehr auf einer Seite: zu niedrig oder zu hoch vorhergesagt.`,
  pitTold: (counts) => `Punktestände vom untersten Fünftel ihrer Vorhersagen bis zum obersten: ${counts}`,
  pitToldTenths: (counts) => `Punktestände vom untersten Zehntel ihrer Vorhersagen bis zum obersten: ${counts}`,
  pitClass: 'Anteil der Vorhersage darunter',
  between: (low, high) => `${low} bis ${high}`,
  scores: 'Punktestände',
  lower: 'niedriger als vorhergesagt',
  higher: 'höher als vorhergesagt',
  coverage: 'Punktestände in den Bereichen der Vorhersage',
  interval: 'Bereich',
  inside: 'Darin',
  wanted: 'Wenn Vorhersagen stimmen',
  verdict: 'Sagt',
  of: (inside, all) => `${inside} von ${all}`,
  coverageVerdicts: {
    fits: 'passt',
    bold: 'Bereiche zu eng',
    cautious: 'Bereiche zu weit',
    few: 'zu wenige, um es zu sagen',
  },
  compared: 'Neben Vorhersagen ohne Beobachtung',
  comparedHow:
    'Weniger ist besser. Quadratischer Fehler der Chance: 0,25 ist eine Münze, ebenso, wer alle Allianzen für gleich hält. Gereiht: wie weit Sieg, Unentschieden und Niederlage danebenliegen. Punktestände: Punkte daneben, mit der Streuung. Der Bereich des Unterschieds (95 %) ist nach Matches.',
  measures: {
    brier: 'Quadratischer Fehler der Chance',
    rps: 'Sieg, Unentschieden, Niederlage gereiht',
    crps: 'Punktestände daneben (Punkte)',
  },
  baselines: {
    coin: 'einer Münze',
    event: 'lauter gleichen Allianzen',
    teams: 'Mitteln offizieller Punktestände',
  },
  against: (measure, baseline) => `${measure}, neben ${baseline}`,
  comparing: 'Verglichen nach',
  ours: 'Vorhersagen',
  theirs: 'Das andere',
  difference: 'Unterschied',
  differenceOf: (difference, low, high) => `${difference} [${low}; ${high}]`,
  comparedVerdicts: {
    better: 'besser',
    worse: 'schlechter',
    open: 'kein Unterschied erkennbar',
    few: 'zu wenige, um es zu sagen',
  },
  parts: (score, off, told, coin) =>
    `Der quadratische Fehler ${score} besteht aus ${off}, weil Chancen nicht stimmen, weniger ${told}, weil sie Matches unterscheiden, ausgehend von ${coin} einer Münze.`,
  all: 'Jede Vorhersage',
  match: 'Match',
  call: 'Angesagt',
  result: 'Eingetroffen',
  kept: 'Aufbewahrt',
  callOf: (alliance, chance) => `${alliance} ${chance}`,
  winner: (alliance, red, blue) => `${alliance} gewann, ${red} : ${blue}`,
  tied: (red, blue) => `Unentschieden, ${red} : ${blue}`,
  states: {
    waiting: 'noch kein Ergebnis',
    voided: 'neu gespielt, zählt nicht',
    late: 'erst nach dem Ergebnis vorhergesagt',
    otherTeams: 'es spielte ein anderes Team als vorhergesagt',
    gone: 'nicht mehr im Zeitplan',
  },
  hit: 'wie angesagt',
  miss: 'nicht wie angesagt',
  keptAt: (moment) => `Aufbewahrt ${moment}, vor dem Match.`,
  notKept: 'Nicht aufbewahrt: Von diesem Match ist schon etwas bekannt, also kann es nicht als Vorhersage zählen.',
  earlier: (forecasts) => (forecasts === 1 ? 'Eine frühere Vorhersage' : `${forecasts} frühere Vorhersagen`),
  earlierOf: (moment, call) => `${moment}: ${call}`,
  before: (moment, call) => `Vor dem Match (${moment}): ${call}.`,
  scoreOf: (alliance, points, low, high, mean) =>
    `${alliance} kam auf ${points}; vorhergesagt waren ${mean}, mit 80 % ${low} bis ${high}.`,
  nowKnown: 'Darunter: was nach dem jetzigen Stand vorhergesagt würde, die Aufzeichnungen dieses Matches ausgenommen.',
  record: 'Wie weit den Vorhersagen zu trauen ist',
}
