import type { Words } from '../catalogue.ts'

export const strip: Words['strip'] = {
  title: 'Zyklusstreifen',
  figure: 'Wohin die Zeit eines Zyklus geht',
  loading: 'der Streifen',
  slider: (name) => `${name}, Sekunden`,
  bar: (name, time) => `${name}: ${time}`,
  repeated: (count) => `${count} Mal`,
  onPath: 'auf dem kritischen Weg',
  float: (time) => `${time} Puffer`,
  worth: (points) => `eine Sekunde weniger bringt ${points} Punkte je Match`,
  perSecond: (points) => `${points}/s`,
  drive: 'Fahren',
  whole: 'Ganzer Weg',
  head: ['Schritt', 'Beginnt', 'Dauert', 'Puffer', 'Auf dem längsten Weg', 'Wert einer Sekunde'],
  worthCell: (points) => `${points} Punkte`,
  lastGood: 'Der Streifen zeigt den letzten Entwurf, der berechnet werden konnte:',
  none: 'Dieser Entwurf kann nicht berechnet werden:',
  legend:
    'Volle Balken sind der kritische Weg: worauf der Roboter wartet. Helle Balken haben Puffer, der schraffiert ist. „+0,8/s“: so viele Punkte je Match bringt dort eine Sekunde weniger. Ein Balken mit Strichen darin wird je Stück einmal getan.',
  keys: 'Zieh das Ende eines Balkens mit Maus oder Finger. Auf einem Balken ändern die Pfeiltasten seine Zeit um 0,1 s, mit Umschalt oder Bild auf und Bild ab um 0,5 s; Strg und eine Pfeiltaste tauschen ihn mit dem Schritt davor oder danach; Entf entfernt ihn.',
  waiting: (legs) =>
    `Im Mittel dauert ein Weg länger als seine Balken (${legs}), weil Schritte auf den jeweils späten warten und Versuche wiederholt werden.`,
  views: {
    label: 'Gezeigte Wege',
    cycle: 'Ganzer Zyklus',
    collect: 'Holen',
    score: 'Punkten',
  },
  cycle: {
    label: 'Zyklus',
    collectingAt: 'Holen bei',
    scoringAt: 'Punkten bei',
    pieces: 'Stücke',
    pair: (source, goal) => `${source} nach ${goal}`,
    way: (pair, number) => `${pair}, Art ${number}`,
  },
  legs: {
    collect: (spot) => `Holen: ${spot}`,
    score: (spot) => `Punkten: ${spot}`,
    finish: (spot) => `Nach ${spot}`,
  },
}
