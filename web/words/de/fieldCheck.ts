import type { Words } from '../catalogue.ts'

const trips = (count: number) => (count === 1 ? 'eine Fahrt' : `${count} Fahrten`)
const ofTrips = (count: number) => (count === 1 ? 'einer Fahrt' : `${count} Fahrten`)
const runs = (count: number) => (count === 1 ? 'ein Lauf' : `${count} Läufe`)
const matches = (count: number) => (count === 1 ? 'ein Match' : `${count} Matches`)
const practice = (count: number) => (count === 1 ? 'ein Übungslauf' : `${count} Übungsläufe`)

const both = (played: number, practised: number) =>
  [...(played > 0 ? [matches(played)] : []), ...(practised > 0 ? [practice(practised)] : [])].join(' und ') ||
  'keine Läufe'

export const fieldCheck: Words['fieldCheck'] = {
  title: 'Modell gegen Feld',
  intro:
    'Was ein Entwurf von seinen Fahrten sagt, neben dem, was bei einem Roboter gestoppt wurde: vom Ende einer Fahrt bis zum Ende der nächsten, in Matches und beim Üben.',
  what: 'Roboter und Entwürfe',
  trouble: 'Roboter und Entwürfe konnten nicht geladen werden',
  whatCompared: 'der Vergleich',
  notCompared: 'Der Entwurf konnte nicht mit dem Feld verglichen werden',
  noTimelines: 'Noch ist keine Fahrt gestoppt',
  noTimelinesHow:
    'Sobald jemand ein Match oder einen Übungslauf am Telefon getippt hat, mit Aufnehmen und Ablegen, lässt sich der Roboter hier mit seinem Entwurf vergleichen.',
  noDesign: 'Zu diesem Spiel gibt es noch keinen Entwurf',
  noDesignHow: 'Verglichen wird das Feld mit dem, was ein Entwurf Schritt für Schritt von seinen Fahrten sagt.',
  toDesigns: 'Entwürfe',
  noRuns: 'Kein solcher Lauf dieses Roboters ist gestoppt',
  noRunsHow: 'Wähle oben andere Läufe, oder stoppe ein Match oder einen Übungslauf am Telefon.',
  noTrips: 'Keine Fahrt dieser Läufe lässt sich vergleichen',
  noTripsHow:
    'Eine Fahrt zählt vom Ablegen davor bis zum eigenen, an Orten, die der Entwurf anfährt. Die erste eines Matches beginnt anderswo und bleibt weg.',
  robot: 'Roboter auf dem Feld',
  design: 'Entwurf',
  asNow: 'Wie er jetzt ist',
  asDecided: (decision) => `Wie er bei der Entscheidung war: ${decision}`,
  robotThen: (robot, decision) => `${robot}, wie in „${decision}“`,
  frozenIn: (robot) => `${robot}, wie er bei dieser Entscheidung war, was auch seither aus dem Entwurf wurde:`,
  runs: 'Läufe',
  runsOf: { all: 'Matches und Üben', match: 'Nur Matches', practice: 'Nur Üben' },
  teamChoice: (team, name, played, practised) => `${team}${name === '' ? '' : ` ${name}`}: ${both(played, practised)}`,
  signedSeconds: (value) => `${value}\u00a0s`,
  interval: (mean, low, high) => `${mean} [${low}; ${high}]`,
  change: (percent) => `${percent}\u00a0%`,
  changeWithin: (change, low, high) => `${change} [${low}; ${high}]`,
  says: (model, field) => `Das Modell sagt ${model} je Fahrt, das Feld sagt ${field}.`,
  saysWithin: (model, field, low, high) =>
    `Das Modell sagt ${model} je Fahrt, das Feld sagt ${field}, mit 95 % zwischen ${low} und ${high}.`,
  longer: (mean, low, high) => `Fahrten auf dem Feld dauern ${mean} länger; mit 95 % zwischen ${low} und ${high}.`,
  shorter: (mean, low, high) => `Fahrten auf dem Feld dauern ${mean} kürzer; mit 95 % zwischen ${low} und ${high}.`,
  maybeChance: (mean, low, high) =>
    `Der Unterschied von ${mean} kann Zufall sein: Mit 95 % liegt er zwischen ${low} und ${high}.`,
  oneRun: 'Alle Fahrten sind aus einem Lauf; wie sehr der nächste abweicht, lässt sich nicht sagen.',
  halves: { collecting: 'im Aufnehmen', scoring: 'im Ablegen' },
  mostIn: (part, whole, half) => `${part} der ${whole} liegen ${half}.`,
  bothWays: (collecting, scoring) => `Das Aufnehmen bringt ${collecting}, das Ablegen ${scoring}.`,
  ofTimed: (count) => `Nur bei ${ofTrips(count)} ist das Aufnehmen gestoppt; die Aufteilung gilt für diese.`,
  from: (tripCount, runCount) =>
    `Aus ${ofTrips(tripCount)} von ${runCount === 1 ? 'einem Lauf' : `${runCount} Läufen`}.`,
  tripsTitle: 'Jede Fahrt über dem, was der Entwurf vorhersagt',
  run: 'Lauf',
  seconds: 'Sekunden',
  seenToEnd: 'Bis zum Ende gesehen',
  yes: 'ja',
  no: 'nein, sie dauerte länger',
  practiceRun: (driver, number) => (driver === null ? `Üben, Lauf ${number}` : `Üben, ${driver}, Lauf ${number}`),
  fits: (p, distance) =>
    `Die Streuung passt: Immer wieder gespielt, liegt der Entwurf selbst in ${p} aller Fälle so weit daneben (Abstand nach Kolmogorow–Smirnow ${distance}).`,
  fitsNot: (p, distance) =>
    `Das ist nicht, was der Entwurf vorhersagt: Immer wieder gespielt, liegt er selbst nur in ${p} aller Fälle so weit daneben (Abstand nach Kolmogorow–Smirnow ${distance}).`,
  compared: (team, design, kind) => `Team ${team} gegen den Entwurf ${design}. ${kind}.`,
  changed: (times) =>
    `Der Roboter wurde während der Veranstaltung ${times === 1 ? 'einmal' : `${times}-mal`} verändert: Frühere Läufe sind die des Roboters, wie er war.`,
  howCame: 'Wie das zustande kam, und was wegblieb',
  howFirst:
    'Eine Fahrt endet mit ihrem letzten Ablegen; das Aufnehmen dauert, bis das letzte Stück aufgenommen ist. Die erste Fahrt eines Matches beginnt anderswo und bleibt weg. Sekunden, in denen der Roboter stand, verteidigte oder nicht zu sehen war, sind abgezogen.',
  howSpots:
    'Wo genau ein Roboter stand, wird kaum je festgehalten: Von den Wegen von einem Ort zum nächsten nimmt der Entwurf den mit den meisten Treffern je Sekunde.',
  howErrors:
    'Die Bereiche kommen daher, wie sich ganze Matches und Läufe unterscheiden, denn Fahrten eines Matches gleichen sich. Getippt wird einige Zehntelsekunden zu spät; das zählt als Streuung.',
  cutOff: (count) => `${trips(count)} endeten mit dem Match oder außer Sicht: Sie dauerten länger und sind so gezählt.`,
  beyond:
    'Manche Fahrten dauerten länger als die längste, die bis zum Ende gesehen wurde; das Mittel des Feldes ist also eher zu kurz.',
  leftOut: {
    noGoal: (count) => `Weggelassen: ${trips(count)} ohne Ziel.`,
    mixed: (count) => `Weggelassen: ${trips(count)} mit Stücken aus mehreren Quellen oder zu mehreren Zielen.`,
    cannotCollect: (count) => `Weggelassen: ${trips(count)} von Quellen, an denen der Entwurf nicht aufnehmen kann.`,
    cannotScore: (count) => `Weggelassen: ${trips(count)} zu Zielen, an denen der Entwurf nicht ablegen kann.`,
    tooMany: (count) => `Weggelassen: ${trips(count)} mit mehr Stücken, als der Entwurf trägt.`,
    noWay: (count) => `Weggelassen: ${trips(count)}, für die der Entwurf keinen Weg findet.`,
  },
  sourceUnknown: (count) =>
    `Bei ${ofTrips(count)} hat niemand die Quelle festgehalten: Es gilt die schnellste des Entwurfs.`,
  defended: (count) =>
    `${trips(count)} endeten, während der Roboter gestört wurde; der Entwurf kennt hier keine Verteidigung.`,
  dots: {
    label: (ended, cutOff) =>
      `${ended} bis zum Ende gesehene und ${cutOff} abgeschnittene Fahrten nach ihren Sekunden, über der Verteilung, die der Entwurf vorhersagt`,
    model:
      'Gestrichelt: so viele sagt der Entwurf vorher. Voll: bis zum Ende gesehen. Leer: dort abgeschnitten, sie dauerte länger.',
    axis: 'Sekunden je Fahrt',
  },
  legs: 'Teil für Teil',
  leg: 'Teil der Fahrt',
  wholeTrip: 'Ganze Fahrt',
  trips: 'Fahrten',
  byModel: 'Modell',
  onField: 'Feld, 95 %',
  difference: 'Unterschied',
  brings: 'Bringt je Fahrt',
  legsHow:
    'Die Mischung der Teile ist in beiden die des Feldes. Die letzte Spalte sagt, was ein Teil zum Unterschied einer mittleren Fahrt bringt: Alle zusammen sind das Ganze.',
  bars: {
    model: 'Modell',
    field: 'Feld mit seinen 95 %',
    row: (name, model, field) => `${name}: Modell ${model}, Feld ${field}`,
  },
  drivers: 'Nach Fahrerin oder Fahrer, von Lauf zu Lauf',
  driver: 'Am Steuer',
  noDriver: 'Nicht festgehalten',
  runCount: 'Läufe',
  doubling: 'Nach doppelt so vielen Läufen',
  fewRuns: 'braucht vier Läufe',
  practice: {
    title: 'Feldzeit zu Modellzeit, Lauf für Lauf',
    row: (name, count) => `${name}: ${runs(count)}`,
    axis: 'Nummer des Laufs; die gestrichelte Linie ist der Entwurf',
  },
  practiceHow:
    'Die Kurve ist das Potenzgesetz des Übens: Jede Verdopplung der Läufe ändert die Zeiten um denselben Anteil. Wo ihr Bereich 0 % enthält, hat sich das Üben noch nicht gezeigt. Wer fährt, wird mit jedem Übungslauf festgehalten; zu Matches kann eine Leitung es nachtragen.',
  drove: {
    title: 'Wer saß in den Matches am Steuer?',
    how: 'Von der Tribüne aus ist es nicht zu sehen, also trage es hier ein. Leer: nicht festgehalten. Nur der Vergleich nach Fahrerin oder Fahrer braucht es; Spitznamen genügen.',
    keep: 'Behalten',
    kept: 'Behalten.',
    undo: 'Zurücknehmen',
    conflict: 'Inzwischen hat jemand die Veranstaltung geändert: Sieh sie noch einmal an und behalte es dann.',
  },
  back: {
    title: 'In eine Kopie zurückschreiben',
    intro:
      'Wähle für jeden Teil den Schritt, der den Unterschied trägt. Er wird verschoben, bis der Teil so lange dauert wie auf dem Feld; ein Schritt neben der Fahrt muss sie erst überdauern. Der Entwurf bleibt, wie er ist.',
    noLegs: 'Bei keiner Fahrt ist das Aufnehmen gestoppt; der Unterschied lässt sich keinem Teil geben.',
    leg: (name, difference) => `${name}: ${difference}`,
    trips: (tripCount, runCount) => `${trips(tripCount)}, ${runs(runCount)}`,
    leave: 'So lassen',
    wholeLeg: 'Der ganze Teil',
    stage: (name, seconds) => `${name}: ${seconds}`,
    canNot: (name) => `${name}: kann es nicht ausgleichen`,
    chooseFirst: 'Wähle einen Schritt, um zu sehen, was er mit den Punkten eines Matches macht.',
    way: 'Spielweise',
    planning: 'Beide werden geplant …',
    notPlanned: (why) => `Die Punkte konnten nicht berechnet werden: ${why}`,
    points: (before, after, change) =>
      `Erwartete Punkte eines Matches: ${before} nach dem Entwurf, ${after} mit diesen Zeiten (${change}).`,
    name: 'Name der Kopie',
    copyName: (name) => `${name}, wie gestoppt`,
    noName: 'Bitte gib der Kopie einen Namen.',
    save: 'Kopie behalten',
    saved: 'Als eigener Entwurf behalten:',
    mayNot: 'Behalten können eine Kopie die Leitung und die Leitung der Mechanik.',
    sameToday:
      'Würden wir heute gleich entscheiden? Entscheidungen, in denen dieser Entwurf vorkam, mit der Kopie neu berechnet:',
    noDecision: 'In keiner Entscheidung kommt dieser Entwurf vor.',
  },
  note: (team, event, played, practised, tripCount) =>
    `Vom Feld zurückgeschrieben: Team ${team} bei ${event}, ${both(played, practised)}, ${trips(tripCount)}.`,
  noteShift: (leg, stage, seconds) => `${leg}, ${stage}: ${seconds}`,
  noteOf: 'Eine Kopie von',
  again: {
    label: 'Entwurf an seiner Stelle',
    newest: 'Keiner: jeder Entwurf, wie er jetzt ist',
    copy: (name, team, played, practised) => `${name} (Team ${team}, ${both(played, practised)})`,
    help: 'Eine Kopie, die vom Feld zurückgeschrieben wurde, kann für ihren Entwurf stehen.',
    stands: (copy, design) => `Würden wir heute gleich entscheiden? ${copy} steht für ${design}:`,
    notLoaded: 'Entwürfe konnten nicht geladen werden',
  },
}
