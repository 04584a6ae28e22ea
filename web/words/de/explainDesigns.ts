import type { Words } from '../catalogue.ts'

export const explainDesigns: Words['explainDesigns'] = {
  toTradeOffs: 'Zu den Abwägungen',
  toDesigns: 'Zu den Entwürfen',
  toStopwatch: 'Zur Stoppuhr',
  otherwise: {
    points:
      'Soll es eine andere Zahl sein: Ändere im Entwurf, was hier eingeht, etwa die Zeit eines Schritts oder eine Chance; oder setze unter „Eigene Zahlen“ einer Abwägung eigene Punkte oder Stücke, mit Grund.',
    routine:
      'Soll es eine andere Zahl sein: Ändere die Schritte und Chancen des Ablaufs; oder setze unter „Eigene Zahlen“ einer Abwägung eigene autonome Punkte, mit Grund.',
    route:
      'Soll es eine andere Zeit sein: Ändere Antrieb oder Grundriss im Entwurf, oder verschiebe Plätze und Hindernisse; oder setze eine eigene Fahrzeit zwischen zwei Plätzen: im Entwurf beim Antrieb, oder mit Grund unter „Eigene Zahlen“ einer Abwägung.',
  },
  spread: {
    title: (option) => `Von Match zu Match: ${option}`,
    result: (low, high) => `8 von 10 Matches zwischen ${low} und ${high} Punkten`,
    formula:
      'Der Plan gibt für jede Punktzahl genau an, wie wahrscheinlich sie ist. Von den wenigsten Punkten an zusammengezählt, erreichen diese Wahrscheinlichkeiten ein Zehntel bei der unteren und neun Zehntel bei der oberen Zahl. Die Standardabweichung ist die Wurzel aus dem mittleren Quadrat des Abstands vom Mittel, über dieselben Wahrscheinlichkeiten. Das ist, was sich von Match zu Match ändert; was über den Roboter nicht bekannt ist, steckt nicht darin.',
  },
  waiting: {
    title: (leg) => `Länger als die Balken: ${leg}`,
    result: (time) => `${time} im Mittel`,
    formula:
      'Die Balken stehen bei mittleren Zeiten, und der längste Weg durch sie ist ihre Länge. In einer einzelnen Fahrt geht der längste Weg durch die Schritte, die gerade spät dran sind; deshalb dauern Fahrten im Mittel länger als der längste Weg der Mittelwerte. Versuche, die scheitern und wiederholt werden, kommen dazu.',
    mean: 'Eine Fahrt im Mittel',
    bars: 'weniger ihre Balken, von Anfang bis Ende',
    total: 'Länger um',
    tenths: '8 von 10 Fahrten dauern',
    between: (low, high) => `${low} bis ${high}`,
  },
  float: {
    title: (stage) => `Puffer: ${stage}`,
    result: (time) => `${time} später verzögert nichts`,
    formula:
      'Mit ihren mittleren Zeiten werden die Schritte aneinandergesetzt, jeder, sobald alles getan ist, worauf er wartet: das gibt sein frühestes Ende. Rückwärts vom Ende der Fahrt gibt es das späteste Ende, das nichts verzögert. Der Unterschied ist der Puffer (Methode des kritischen Weges, Kelley und Walker 1959).',
    latest: 'Könnte spätestens enden bei',
    earliest: 'weniger: endet frühestens bei',
    total: 'Puffer',
    begins: 'Beginnt frühestens',
    takes: 'Dauert im Mittel',
  },
  critical: {
    title: (stage) => `Auf dem längsten Weg: ${stage}`,
    result: (share) => `in ${share} der Fahrten`,
    formula: (draws) =>
      `Für ${draws} Fahrten wird von jedem Schritt eine der Zeiten gezogen, zwischen denen er schwankt, und in jeder der längste Weg gesucht. Gezählt wird, wie oft der Schritt darauf liegt; von gleich langen Wegen zählen alle. Jeder Schritt eines Weges zählt, deshalb ergeben die Anteile einer Fahrt zusammen nicht eins.`,
    takes: (time) => `dauert ${time}`,
  },
  besideTime: {
    title: (mine, other) => `Zeit der Fahrt: ${other} neben ${mine}`,
    formula:
      'Das Mittel jedes Weges, zum Holen und zum Punkten, über das, was an ihren Schritten schwankt, wiederholte Versuche eingeschlossen, für dieselben Wege beider Roboter. Darunter je Weg, was der andere Entwurf braucht, weniger dem, was dieser braucht.',
    both: (mine, my, other, its) => `${mine} ${my}, ${other} ${its}`,
    total: 'Die ganze Fahrt',
  },
  besidePoints: {
    title: (mine, other) => `Punkte: ${other} neben ${mine}`,
    formula:
      'Für jeden Entwurf wird das Match geplant: in jedem Augenblick das, was für die verbleibende Zeit am meisten wert ist. Seine erwarteten Punkte sind, was das im Mittel bringt. Der Unterschied sind die des anderen Entwurfs weniger die von diesem.',
    less: (mine) => `weniger ${mine}`,
    total: 'Unterschied',
    this: 'Dieser Entwurf wird gespielt als',
    other: 'Der andere wird gespielt als',
  },
  route: {
    title: (from, to) => `Weg: ${from} nach ${to}`,
    formula:
      'Der kürzeste Weg der Mitte des Roboters, der von Hindernissen und Rand so weit wegbleibt, wie der Roboter auf beiden Seiten braucht. Die Zeit ist die eines idealen Fahrers vom Stand zum Stand: anfahren, mit Höchstgeschwindigkeit, bremsen, und durch Bögen so schnell, wie die Beschleunigung den Roboter darauf hält. Das Tempo steckt nicht darin.',
    cruise: 'Alles mit Höchstgeschwindigkeit',
    rest: 'Anfahren, Bremsen und Bögen',
    total: 'Vom Stand zum Stand',
    away: 'Die Mitte bleibt von Hindernissen weg',
    size: 'Roboter, Länge und Breite',
  },
}
