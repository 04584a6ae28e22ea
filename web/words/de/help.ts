import type { Words } from '../catalogue.ts'

export const help: Words['help'] = {
  title: 'Hilfe',
  begin: 'Wie du anfängst',
  paths: [
    {
      title: 'Sehen, was herauskommt',
      steps: [
        'Die Startseite zeigt die offene Frage der neuesten Entscheidung mit ihrer Antwort. Jede Zahl mit Punkten darunter lässt sich aufklappen: wie sie zustande kam.',
        'Von dort zeigt die Abwägung, was die Antwort ändern würde, und der Entscheidungsbogen lässt sich drucken.',
      ],
      href: '/',
      link: 'Zur Startseite',
    },
    {
      title: 'Spielweisen in zehn Minuten reihen',
      steps: [
        'Beginne ein Schnellblatt zu eurem Spiel oder zu dem, das schon da ist.',
        'Füge eine Spielweise hinzu: wo sie holt, wo sie punktet und wie viele Sekunden jeder Weg deiner Meinung nach dauert. Fünf Spielweisen ergeben eine Reihung.',
        'Wo ihr euch über eine Zahl nicht einig seid, öffne eine Schätzrunde: Alle schätzen am eigenen Telefon.',
      ],
      href: '/quick-sheet',
      link: 'Zu den Schnellblättern',
    },
    {
      title: 'Für das eigene Spiel entscheiden',
      steps: [
        'Spiele: Beginne mit einem leeren Feld oder kopiere eins. Gib die Uhr ein, die Orte und was sie zahlen; verschiebe ihre Standpunkte auf dem Feld.',
        'Entwürfe: Skizziere einen Roboter für euer Spiel und einen zweiten, der etwas weglässt. Gib jedem eine Spielweise.',
        'Abwägungen: Vergleiche ihre Spielweisen und benenne die Zahlen, die ihr nicht kennt.',
        'Entscheidungen: Bewahre die Antwort aus ihrer Abwägung auf und drucke sie.',
      ],
      href: '/games',
      link: 'Zu den Spielen',
    },
    {
      title: 'Auf einer Veranstaltung',
      steps: [
        'Event: Leg sie mit ihren Teams und ihrem Zeitplan an, oder bring sie aus einer Datei herein. Verteile, wer wen beobachtet; gezählt wird auf dem eigenen Telefon.',
        'Was das Feld sagt: alle Teams nebeneinander, soweit sie gesehen wurden, und wie die kommenden Matches ausgingen. Zweifel führt auf, welche Aufzeichnungen nicht passen.',
        'Modell gegen Feld: die gestoppten Fahrten eines Roboters neben dem, was sein Entwurf sagt. Prüf damit eure Entscheidungen.',
      ],
      href: '/event',
      link: 'Zu den Veranstaltungen',
    },
  ],
  words: 'Was die Wörter heißen',
  find: 'Ein Wort finden',
  noWord: (typed) => `In keinem Wort hier kommt „${typed}“ vor.`,
  shortcuts: 'Tastenkürzel',
  shortcutsHow: 'Drücke ? auf einer beliebigen Seite, um diese Liste zu sehen, außer während du tippst.',
  numbers: 'Was die Zahlen sind',
  numbersText: [
    'Punkte sind erwartete Punkte eines Roboters allein in einem Match: kein Verkehr, keine Schlangen, keine Gegner. Ein Punkt Unterschied zwischen zwei Skizzen ist weniger, als irgendwer über sie weiß.',
    'Auf der Seite Match sind es Punkte von drei Robotern gegen drei, mit Schlangen, vollen Zielen, Verteidigung und Glück; ± ist dort ein Standardfehler.',
    'Sekunden stehen auf 0,1 genau da, Punkte auf 0,1, Chancen auf 1 %. Was nicht so genau bekannt ist, zeigt, wie genau es bekannt ist.',
    'Ein Feld für eine Länge, eine Masse oder eine Geschwindigkeit liest 36 in, 3 ft 2 in, 0,9 m oder 12 lb, in welchen Einheiten auch immer gezeigt wird.',
    'Auf den Seiten einer Veranstaltung kommen die Zahlen aus dem, was aufgezeichnet wurde; an jeder steht, wo sie mit 80 % und mit 95 % liegt.',
  ],
  onThisScreen: 'Wörter:',
  all: 'Alle Wörter',
}
