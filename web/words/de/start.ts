import type { Words } from '../catalogue.ts'

export const start: Words['start'] = {
  title: 'Was wird euer Roboter tun, und was lässt er weg?',
  intro:
    'Cyclewright macht aus den Regeln der Saison, dem Feld und einem Mechanismus, den es erst als Skizze gibt, Punkte je Match: wohin die Zeit einer Fahrt geht, was jede Sekunde wert ist und was die Antwort ändern würde.',
  words: {
    label: 'Wörter:',
    terms: {
      expectedPoints: 'erwartete Punkte',
      cycle: 'Zyklus',
      option: 'Möglichkeit',
      belief: 'Wissensstand',
      breakEven: 'Wendepunkt',
    },
    all: 'Hilfe und alle Wörter',
  },
  what: 'die offene Frage',
  notLoaded: 'Die offene Frage ließ sich nicht laden',
  first: {
    label: 'Erste Schritte',
    noDecision: 'Noch keine Entscheidung',
    nothing: 'Noch ist hier nichts',
    decide: 'Öffne eine Abwägung, sieh nach, was die Antwort ändern würde, und halte sie als Entscheidung fest.',
    begin:
      'Am ersten Samstag reiht ein Schnellblatt Spielweisen nach einer Schätzung je Weg. Davor gib das Spiel eurer Saison ein.',
    toTradeOffs: 'Zu den Abwägungen',
    toGames: 'Eigenes Spiel eingeben',
    toQuickSheet: 'Ein Schnellblatt beginnen',
  },
  question: {
    label: (game) => `Offene Frage · ${game}`,
    answer: (option) => [`${option}: `, ' Punkte je Match'],
    level: (option, other) => [`„${option}“ und „${other}“ liegen gleichauf: `, ' Punkte auseinander'],
    chance: ['Mit einer Chance von ', ' ist es die bessere Wahl, über alles, was ihr für möglich haltet.'],
    matches: (option, share) => `In einzelnen Matches bringt es in ${share} der Fälle mehr Punkte als „${option}“.`,
    source: (decision, revision, comparison, of) =>
      `Aus dem Entscheidungsbogen „${decision}“, Fassung ${revision}; Abwägung ${comparison}, Fassung ${of}.`,
    failed: (why) => `Ließ sich hier nicht neu rechnen: ${why} Gezeigt ist die gesicherte Antwort.`,
    same: (by) => `Eben in deinem Browser neu gerechnet: auf ${by} Punkte dasselbe wie die gesicherte Antwort.`,
    differs: (by) => `Eben in deinem Browser neu gerechnet; die gesicherte Antwort wich um bis zu ${by} Punkte ab.`,
    computing: 'Die gesicherte Antwort; in deinem Browser wird neu gerechnet …',
    tradeOff: 'Zur Abwägung',
    designs: 'Zu den Entwürfen',
    decision: 'Zum Entscheidungsbogen',
  },
  matches: {
    what: 'das Bild der Matches',
    title: 'Zwanzig gleich wahrscheinliche Matches von jedem',
    head: 'Match von 20',
    legend:
      'Jeder Punkt ist eines von 20 gleich wahrscheinlichen Matches, das Dreieck der Mittelwert. Punkte dieses Roboters allein.',
  },
  shelves: {
    game: { title: 'Spiele', none: 'Noch kein Spiel.', add: 'Eigenes Spiel eingeben' },
    quickSheet: { title: 'Schnellblätter', none: 'Noch kein Schnellblatt.', add: 'Spielweisen reihen' },
    design: { title: 'Entwürfe', none: 'Noch kein Entwurf.', add: 'Einen Roboter skizzieren' },
    comparison: { title: 'Abwägungen', none: 'Noch keine Abwägung.', add: 'Spielweisen vergleichen' },
  },
  saved: (revision, when) => `Fassung ${revision}, ${when}`,
}
