import type { Words } from '../catalogue.ts'

export const explainTradeoffs: Words['explainTradeoffs'] = {
  reach: {
    title: (option) => `Wahrscheinlichkeit, Punkte zu erreichen: ${option}`,
    result: (points, chance) => `${points} Punkte oder mehr in ${chance} der Matches`,
    formula:
      'Der Plan gibt für jede Punktzahl genau an, wie wahrscheinlich sie ist. Die Wahrscheinlichkeiten aller Zahlen, die mindestens so groß sind, werden zusammengezählt.',
    part: (points) => `mindestens ${points} Punkte`,
  },
  regret: {
    title: 'Im Mittel verloren, wenn es gewählt wird',
    formula:
      'Jede Unbekannte wird 2000-mal aus dem gezogen, was du über sie glaubst, alle Möglichkeiten mit denselben Ziehungen. In jeder werden die Punkte einer Möglichkeit von denen der dort besten abgezogen; das Mittel über alle Ziehungen ist, was ihre Wahl verliert gegenüber besserem Wissen.',
    best: (share) => `die beste in ${share} der Ziehungen`,
    result: (option, lost) => `${option}: ${lost} Punkte je Match`,
  },
  difference: {
    title: 'Ein Match gegen ein anderes',
    result: (own, other, less) => `„${own}“ hat in ${less} der Paare von Matches weniger Punkte als „${other}“`,
    formula:
      'Von beiden Möglichkeiten ist für jede Punktzahl bekannt, wie wahrscheinlich sie ist. Jede Zahl der einen wird gegen jede Zahl der anderen gestellt, mit dem Produkt der Wahrscheinlichkeiten, als hätten die beiden Matches nichts miteinander zu tun. Jeder Punkt steht für eines von zwanzig solchen Paaren.',
    less: 'Weniger',
    same: 'Gleich viele',
    more: 'Mehr',
    mean: 'Punkte voraus im Mittel',
    middle: 'Die Hälfte der Paare ist voraus um weniger als',
    low: '1 von 10 Paaren ist voraus um weniger als',
    high: '9 von 10 Paaren sind voraus um weniger als',
  },
  idle: {
    title: 'Was egal ist',
    formula:
      'Jede Unbekannte für sich geht vom niedrigen zum hohen Wert, alle anderen bleiben bei ihrem wahrscheinlichen, und jede Möglichkeit wird bei 17 Werten geplant. Wo überall dieselbe um mehr als einen Viertelpunkt führt, wendet sich nichts; ein knapperer Vorsprung wird auf dem feinen Zeitraster bei 33 Werten angesehen und jeder Wechsel der besten eingegrenzt. Zwei Wechsel zwischen zwei Nachbarwerten würden nicht bemerkt.',
    result: (idle, all) => `${idle} von ${all} Unbekannten ändern die Antwort allein nicht`,
    lead: (lead) => `kleinster Vorsprung ${lead} Punkte`,
    turns: (where) => `wendet sie bei ${where}`,
  },
  map: {
    title: (x, y) => `Die Karte über „${x}“ und „${y}“`,
    formula:
      'Bei jedem Wert der Karte werden beide Unbekannten gesetzt, alle anderen auf ihren wahrscheinlichen Wert, und jede Möglichkeit wird neu geplant. Zwischen den Werten gelten die Punkte als gerade; die Grenze ist dort, wo die beiden besten gleich viel wert sind. An ihr wird die Karte doppelt so fein.',
    likely: 'Bei den wahrscheinlichsten Werten',
  },
  piece: {
    title: (option) => `Was ein Spielstück mehr wert ist: ${option}`,
    result: (points, left) => `${points} Punkte, wenn noch ${left} bleiben`,
    formula:
      'Der Plan weiß, was jeder Platz mit jeder Ladung und verbleibenden Zeit im Mittel noch wert ist, so gut gespielt wie möglich. Der Wert eines Stücks mehr ist dieser Wert mit ihm in der Hand weniger dem ohne es, am selben Platz zur selben Zeit, je Stück. Bei Form 1 und mit dem Platz in den Zielen, der bis dahin zu erwarten ist.',
    at: (left) => `noch ${left}`,
  },
}
