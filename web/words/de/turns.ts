import type { Words } from '../catalogue.ts'

export const turns: Words['turns'] = {
  arguments: {
    title: 'Welche Argumente zählen',
    looking: (done, all) => `Es wird gesucht, was egal ist: ${done} von ${all} Unbekannten …`,
    progress: 'Fortschritt der Suche',
    stop: 'Nicht weiter suchen',
    printed: (done, all) =>
      `Beim Druck waren ${done} von ${all} Unbekannten angesehen; ob die anderen zählen, fehlt hier.`,
    stopped: (done, all) =>
      `Angehalten: ${done} von ${all} Unbekannten sind angesehen. Über die anderen ist nichts gesagt.`,
    goOn: 'Weiter',
    idle: 'Diese Argumente sind egal',
    idleHow:
      'Welchen Wert sie in dem Bereich auch haben, den du für möglich hältst: Die beste Möglichkeit bleibt dieselbe. Für diese Wahl muss über sie nicht gestritten werden.',
    lead: (name, low, high, lead) =>
      `„${name}“, irgendwo von ${low} bis ${high}: Der Vorsprung bleibt mindestens ${lead} Punkte.`,
    thin: (name, low, high) =>
      `„${name}“, irgendwo von ${low} bis ${high}: Die beste bleibt dieselbe, stellenweise um weniger als 0,1 Punkte.`,
    noneIdle: (all) =>
      all === 1
        ? 'Die einzige genannte Unbekannte kann die Antwort wenden.'
        : 'Jede Unbekannte kann die Antwort allein wenden.',
    turning: 'Diese wenden die Antwort allein',
    noneTurning: 'Keine Unbekannte wendet die Antwort allein; mehrere zusammen vielleicht.',
    swingHow: (best) =>
      `Jede Unbekannte für sich, vom niedrigen zum hohen Wert: wie weit sie den Vorsprung von ${best} bewegt.`,
    otherwise: (likely, stands) =>
      `Mit allen Unbekannten bei ihrem wahrscheinlichen Wert ist der Vorsprung ${likely}; nach den Unterlagen, wie sie stehen, ${stands}.`,
    figure: 'Vorsprung der besten Möglichkeit, eine Unbekannte nach der anderen',
    unknown: 'Unbekannte',
    low: 'Niedrig',
    atLow: 'Vorsprung dort',
    high: 'Hoch',
    atHigh: 'Vorsprung dort oben',
    ahead: 'noch die beste',
    behind: 'eine andere ist besser',
  },
  turn: {
    title: 'Was die Antwort wenden würde',
    unknown: 'Unbekannte',
    own: 'Unbekannte dieser Abwägung',
    other: 'Andere Zahlen der Roboter',
    keep: 'In der Antwort diese nennen',
    loading: 'wo sie sich wendet',
    lines: 'die Linien',
    about: (what) => `${what}. Alle anderen Unbekannten sind bei ihrem wahrscheinlichen Wert.`,
    notOwn: 'Diese Zahl ist noch keine Unbekannte der Abwägung: Der Bereich ist eine erste Schätzung.',
    figure: (name) => `Erwartete Punkte über ${name}`,
    legend: (letters) => `${letters}. An der gestrichelten Linie wechselt die beste Möglichkeit.`,
    pays: (option, name, where) => `„${option}“ lohnt sich, solange „${name}“ ${where} liegt`,
    paysSuccess: (option, name, where) => `„${option}“ lohnt sich, solange „${name}“ ${where} der Versuche liegt`,
    above: (value) => `über ${value}`,
    below: (value) => `unter ${value}`,
    between: (low, high) => `zwischen ${low} und ${high}`,
    or: ' oder ',
    looked: (low, high, now) => `angesehen von ${low} bis ${high}, jetzt ${now}`,
    believe: (low, high, likely) => `du hältst ${low} bis ${high} für möglich, am ehesten ${likely}`,
    never: (option, name, low, high) =>
      `„${option}“ bleibt die beste: „${name}“ wendet die Antwort nirgends zwischen ${low} und ${high}`,
    level: (option, name, low, high) =>
      `Kein Wert von „${name}“ zwischen ${low} und ${high} bringt eine andere Option vor „${option}“, stellenweise liegen die besten zwei aber gleichauf`,
    jump: 'Am Wendepunkt wechselt die beste Spielweise, deshalb springen dort die Punkte.',
  },
  map: {
    title: 'Zwei Unbekannte zugleich',
    how: 'Welche Möglichkeit wo die beste ist, alle anderen Unbekannten bei ihrem wahrscheinlichen Wert.',
    x: 'Nach rechts',
    y: 'Nach oben',
    two: 'Eine Karte braucht zwei verschiedene Unbekannte.',
    few: 'Nenne unten zwei Unbekannte, dann lassen sie sich auf eine Karte bringen.',
    draw: 'Karte zeichnen',
    again: 'Neu zeichnen',
    stop: 'Anhalten',
    drawing: (share) => `Matches werden geplant: ${share}`,
    progress: 'Fortschritt der Karte',
    stoppedLast: 'Angehalten. Zu sehen ist, was bis dahin da war.',
    stopped: 'Angehalten.',
    none: 'Für diese Zahlen noch nicht gezeichnet. Es dauert einige Sekunden, wird beim Zusehen feiner und lässt sich anhalten.',
    grain: (side) => `${side} × ${side} Werte`,
    fine: (side) =>
      `${side} × ${side} Werte, an der Grenze doppelt so fein. Auf einem groben Zeitraster geplant; das verschiebt die Grenze so weit wie einige Hundertstelpunkte.`,
    figure: (x, y) => `Beste Möglichkeit über ${x} und ${y}`,
    likely: 'am ehesten',
    readX: (name) => `Ablesen bei: ${name}`,
    reads: (x, y, option, lead) => `${x}, ${y}: „${option}“ führt mit ${lead} Punkten.`,
    roughly: (x, y, option, lead) => `${x}, ${y}: „${option}“ führt mit etwa ${lead} Punkten …`,
    even: (x, y) => `${x}, ${y}: gleichauf.`,
    touch: 'Berühre oder klicke die Karte oder bewege die beiden Regler, um eine Stelle abzulesen.',
    all: (option) => `„${option}“ ist überall auf dieser Karte die beste.`,
    share: (option, share) => `„${option}“ ist auf ${share} der Karte die beste`,
    atLikely: (option) => `bei den wahrscheinlichsten Werten ist es „${option}“`,
    cell: (letter, lead) => `${letter} ${lead}`,
    corner: (y, x) => `${y} \\ ${x}`,
  },
}
