import type { Words } from '../catalogue.ts'

export const objective: Words['objective'] = {
  title: 'Was zählt',
  help: 'Punkte sind die eines Roboters allein, und genau. Siege und Ranglistenpunkte hängen davon ab, wer sonst spielt: Sag, mit wem und gegen wen, und ganze Matches werden gespielt.',
  judge: 'Geurteilt nach',
  names: { points: 'Punkten', win: 'Siegen', rankingPoints: 'Ranglistenpunkten' },
  by: { win: 'Siegen', rankingPoints: 'Ranglistenpunkten' },
  partners: 'Mit jeder Möglichkeit spielen',
  opponents: 'Gegen sie spielen',
  partner: (position) => `Partner ${position}`,
  opponent: (position) => `Gegner ${position}`,
  loading: 'die Spielweisen',
  noWays: 'Für dieses Spiel gibt es keine Spielweise mehr zur Auswahl.',
  notFound: 'Partner oder Gegner konnten nicht geladen werden',
  region: 'Antwort aus ganzen Matches',
  ahead: (by, best, lead) => `Nach ${by}: ${best}, ${lead} je Match`,
  alone: (by, best) => `Nach ${by}: ${best}`,
  level: (by, best, second, lead) =>
    `Nach ${by} unterscheiden diese Matches „${best}“ und „${second}“ nicht: ${lead} je Match`,
  byPoints: 'Nach Punkten:',
  same: (best, lead) => `Auch nach Punkten liegt „${best}“ vorn: ${lead} je Match.`,
  pointsLevel: (one, other) => `Nach Punkten liegen „${one}“ und „${other}“ gleichauf.`,
  notSure: (best, lead) =>
    `Nach Punkten liegt „${best}“ vorn (${lead} je Match). Ob das hier auch gilt, sagen die Matches nicht.`,
  disagree: (of) =>
    `Nach Punkten und nach ${of.by} ist die Reihenfolge verschieden: Nach Punkten liegt „${of.points}“ vorn (${of.pointsLead} je Match), nach ${of.by} „${of.best}“ (${of.lead}).`,
  bonus: (name, own, other) =>
    `„${name}“ gibt es in ${own} ihrer Matches, mit der anderen in ${other}: mehr, als ihre Punkte zeigen.`,
  winsFewer: (difference) => `Das wiegt die Matches auf, die sie seltener gewinnt (${difference}).`,
  wins: (own, other) => `Sie gewinnt ${own} ihrer Matches, die andere ${other}; ein Unentschieden zählt halb.`,
  table: 'Möglichkeiten nach ganzen Matches',
  option: 'Möglichkeit',
  win: 'Siege',
  rankingPoints: 'Ranglistenpunkte',
  score: 'Punkte der Allianz',
  named: (name) => `„${name}“`,
  who: (of) => `Mit ${of.partners} gegen ${of.opponents}; je ${of.matches} Matches, alle mit demselben Glück.`,
  atLevel: (level) => `Ebene der Veranstaltung: ${level}.`,
  errors:
    '± ist ein Standardfehler der Simulation, aufgerundet. Was wir über die Roboter nicht wissen, steckt nicht darin.',
  pointsBelow:
    'Was folgt, gilt nach Punkten: Was die Antwort wendet, was geglaubt wird, der Ruf und was ein Stück mehr wert ist, wird für Siege und Ranglistenpunkte nicht gerechnet.',
  preparing: 'Was die Roboter können, wird ausgerechnet …',
  running: (done, of) => `${done} von ${of} Matches je Möglichkeit gespielt …`,
  stopped: (done) => `Nach ${done} Matches je Möglichkeit angehalten. Gezeigt ist, was sie sagen.`,
  stoppedEarly: 'Vor dem ersten Match angehalten.',
  old: 'Diese Zahlen gelten für das, was davor gefragt war; die neuen kommen.',
  kept: 'Das ist das gespeicherte Ergebnis.',
  stop: 'Nicht weiter spielen',
  goOn: 'Weiter spielen',
  failed: 'Diese Matches können nicht gespielt werden',
  explain: {
    title: { win: 'Siege voraus', rankingPoints: 'Ranglistenpunkte voraus' },
    formula: {
      win: 'Jede Möglichkeit spielt dieselben Matches: dieselben Partner, dieselben Gegner, dasselbe Glück. Ein Sieg zählt 1, ein Unentschieden ½. Der Vorsprung ist der Mittelwert der Unterschiede Match für Match, ± sein Standardfehler.',
      rankingPoints:
        'Jede Möglichkeit spielt dieselben Matches: dieselben Partner, dieselben Gegner, dasselbe Glück. Der Vorsprung ist der Mittelwert der Unterschiede Match für Match, ± sein Standardfehler. Er ist die Summe dessen, was Ergebnisse und jeder Bonus bringen.',
    },
    lead: 'Vorsprung',
    results: 'Ergebnisse der Matches (Siege und Unentschieden)',
    bonus: (name) => `Bonus „${name}“`,
    matches: 'Matches je Möglichkeit',
    luck: 'Glückszahl',
  },
  record: {
    title: 'Geurteilt nach',
    again:
      'Diese Entscheidung fiel nicht nach Punkten allein. Hier werden Punkte gerechnet; Siege und Ranglistenpunkte rechnet ihre Abwägung.',
  },
}
