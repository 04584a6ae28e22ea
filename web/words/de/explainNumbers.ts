import type { Words } from '../catalogue.ts'

export const explainNumbers: Words['explainNumbers'] = {
  call: {
    title: (option) => `Der Ruf: ${option}`,
    result: (at, points) => `losfahren, wenn noch ${at} bleiben: ${points} Punkte je Match`,
    formula:
      'Das ganze Match wird für einen Zeitpunkt nach dem anderen geplant, mit der Regel „vorher kein Abschluss, und bei der ersten Entscheidung danach der beste“. Der Zeitpunkt mit den meisten erwarteten Punkten ist der Ruf. Drei Sekunden früher und später zeigen, wie genau er kommen muss. Soll zu einer anderen Zeit gerufen werden: Gib dem Entwurf eine Spielweise, die dann zum Abschluss aufbricht, und stelle sie daneben.',
    at: (time) => `Ruf, wenn noch ${time} bleiben`,
    loses: (points) => `${points} Punkte weniger`,
    whenItPays: 'Ohne Ruf, in jedem Augenblick neu entschieden',
  },
  leaveBy: {
    title: (option) => `Aufbruch: ${option}`,
    result: 'ab wann der Weg zum Abschluss das Beste ist',
    formula:
      'Von jedem Platz und mit jeder Ladung wird der Abschluss mit jeder anderen Fahrt verglichen, mit der Zeit, die sie braucht, und dem, was die Zeit danach noch wert ist. „Am besten ab“ ist die erste verbleibende Zeit, zu der der Abschluss am meisten wert ist; „spätestens“ ist die kleinste, zu der der Aufbruch höchstens einen halben Punkt weniger bringt.',
    otherwise:
      'Sollen es andere Zeiten sein: Ändere im Entwurf Zeit oder Chance des Abschlusses; oder setze eigene, mit Begründung, unter „Eigene Zahlen“ auf dieser Seite.',
    toOwn: 'Zu den eigenen Zahlen',
    forgone: (points) => `die beste andere Fahrt wäre dort ${points} Punkte wert`,
  },
  turn: {
    title: (unknown) => `Wo „${unknown}“ die Antwort wendet`,
    formula:
      'Alle anderen Unbekannten bleiben bei ihrem wahrscheinlichen Wert. Die Möglichkeiten werden bei 33 Werten dieser einen geplant, vom niedrigen bis zum hohen; zwischen zwei Nachbarn mit verschiedenen Besten wird der Wert eingegrenzt, bei dem beide gleich viel wert sind. Die Linien stammen aus einem gröberen Zeitraster, was sie um Hundertstelpunkte verschiebt.',
    low: (value) => `Beim niedrigen Wert, ${value}`,
    likely: (value) => `Beim wahrscheinlichen Wert, ${value}`,
    high: (value) => `Beim hohen Wert, ${value}`,
    crossing: (value) => `Wo sie sich wendet, ${value}`,
  },
  ahead: {
    title: 'Vorn in einem einzelnen Match',
    formula:
      'Von beiden Möglichkeiten ist für jede Punktzahl bekannt, wie wahrscheinlich sie ist. Jedes Paar von Punktzahlen wird verglichen, mit dem Produkt der Wahrscheinlichkeiten, als hätten die beiden Matches nichts miteinander zu tun; Gleichstand zählt halb.',
  },
  knowing: {
    title: 'Was Wissen vor der Entscheidung wert ist',
    result: (points) => `${points} Punkte je Match, wenn alles bekannt wäre`,
    formula:
      'In jeder der 2.000 Ziehungen wird die dort beste Möglichkeit mit der im Mittel besten verglichen; der Mittelwert ihres Vorsprungs ist der Wert, alles zu wissen. Für eine einzelne Unbekannte wird der Unterschied zwischen den Möglichkeiten zuerst über ihren Werten geglättet. Was unter dem eigenen Standardfehler liegt, steht als 0 da. Die Teile ergeben keine Summe: Zwei Unbekannte können zusammen mehr sagen oder weniger.',
    error: (points) => `Standardfehler ${points}`,
  },
  measuring: {
    title: 'Was Messen wert ist',
    formula:
      'Messen macht eine Unbekannte nicht genau: Ihre Ziehungen rücken so weit zu ihrem Mittelwert, wie so viele Messungen mit der Streuung einer einzelnen sie offenlassen. Dann wird derselbe geglättete Unterschied genommen wie für das genaue Wissen.',
    times: (unknown, count) => `${unknown}: ${count}-mal`,
    spread: (unknown) => `${unknown}: Streuung einer Messung`,
  },
  swing: {
    title: 'Wie weit jede Unbekannte den Vorsprung bewegt',
    result: (lead) => `${lead} Punkte je Match mit allen Unbekannten bei ihrem wahrscheinlichen Wert`,
    formula:
      'Eine Unbekannte nach der anderen wird auf ihren niedrigen und dann auf ihren hohen Wert gesetzt, alle anderen auf ihren wahrscheinlichen, und jede Möglichkeit neu geplant. Gezeigt ist der Vorsprung der besten Möglichkeit.',
    range: (low, high) => `von ${low} bis ${high}`,
  },
  gain: {
    title: 'Was die Änderung bringt',
    formula:
      'Dieselbe Spielweise mit dem Roboter, wie er hier steht, weniger mit dem Roboter, wie er gesichert ist. Bis der genaue Plan nachgekommen ist, sagt ein Plan auf gröberem Zeitraster, wie weit sich die Punkte bewegt haben.',
    now: 'Wie er hier steht',
    saved: 'weniger wie gesichert',
    change: 'Änderung',
  },
  worth: {
    title: 'Was eine Sekunde jedes Schritts wert ist',
    result: 'Punkte je Match für eine Sekunde weniger',
    formula:
      'Jede Zeit des Schritts wird um eine halbe Sekunde verkürzt (oder um die Hälfte ihres Mittelwerts, wo das weniger ist), in allen Fahrten mit diesem Schritt, und das Match neu geplant; dann ebenso verlängert. Der Unterschied der beiden, je Sekunde, ist der Wert. Schritte mit Puffer sind wenig wert: Gewartet wird auf andere.',
    takes: (time) => `dauert ${time}`,
  },
}
