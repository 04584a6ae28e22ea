import type { Words } from '../catalogue.ts'

export const glossary: Words['glossary'] = {
  alliance: { word: 'Allianz', means: 'die Roboter, die in einem Match zusammen spielen' },
  autonomousTeleopEndgame: {
    word: 'Autonome Zeit, gefahrene Zeit, Endphase',
    means:
      'der Teil ohne Fahrerinnen und Fahrer, der Teil mit ihnen, und dessen letzte Sekunden, in denen Abschlüsse zählen',
  },
  belief: {
    word: 'Wissensstand',
    means:
      'was wir über eine Zahl nicht wissen, als niedrig, wahrscheinlich und hoch; nicht dasselbe wie Schwankung von Fahrt zu Fahrt',
  },
  breakEven: {
    word: 'Wendepunkt',
    means: 'der Wert einer Unbekannten, bei dem eine andere Möglichkeit die beste wird',
  },
  calibration: {
    word: 'Kalibrierung',
    means: 'wie weit, was mit 70 % vorhergesagt ist, siebenmal in zehn Fällen eintrifft, und so bei jeder Chance',
  },
  call: { word: 'Ruf', means: 'die eine verbleibende Zeit, zu der vom Rand aus zum Abschluss gerufen wird' },
  cautiousBound: {
    word: 'vorsichtige Grenze',
    means:
      'der Druck eines Behälters, der das ganze Match keine Wärme bekommt: Jede Entnahme kostet ihn das 1,4-Fache von dem eines, der sich sofort erwärmt',
  },
  criticality: {
    word: 'Kritikalität',
    means: 'der Anteil der Fahrten, in denen ein Schritt auf dem längsten Pfad liegt und die Fahrt also verzögert',
  },
  cycle: {
    word: 'Zyklus',
    means: 'Stücke aufnehmen und mit ihnen punkten: ein Weg zur Quelle und der Weg zum Ziel danach',
  },
  design: { word: 'Entwurf', means: 'ein Roboter, gebaut oder skizziert' },
  expectedPoints: { word: 'Erwartete Punkte', means: 'der Mittelwert über sehr viele Matches' },
  finish: { word: 'Abschluss', means: 'eine Art, das Match für Punkte zu beenden, etwa zu hängen' },
  float: { word: 'Puffer', means: 'wie viel später ein Schritt enden könnte, ohne die Fahrt zu verzögern' },
  form: { word: 'Form', means: 'wie gut der Tag des Roboters ist: ein Faktor je Match auf alle seine Zeiten' },
  goalSource: {
    word: 'Ziel, Quelle',
    means: 'ein Ort, an dem Stücke zählen, und einer, an dem sie aufgenommen werden',
  },
  holdSeconds: {
    word: 'Haltesekunden (h)',
    means:
      'Sekunden des Haltens, die ein Stück auf einem Ziel einbringt: Eine Spielweise plant mit einer solchen Zahl, ein Match zeigt, wie viele es waren, im Mittel und für ein Stück mehr (Grenzwert)',
  },
  leaveBy: { word: 'Aufbruch', means: 'die verbleibende Zeit, ab der es das Beste ist, zu einem Abschluss zu fahren' },
  leg: { word: 'Weg', means: 'eine Fahrt von einem Standpunkt zu einem anderen: holen, punkten oder abschließen' },
  lineup: { word: 'Aufstellung', means: 'wer von uns in einem Match was macht: Ziele, Abschluss, und wen er deckt' },
  load: { word: 'Ladung', means: 'die Stücke, die ein Roboter hält' },
  marking: {
    word: 'Decken',
    means: 'bei einem Gegner bleiben und seine Fahrten bremsen; währenddessen bringt der Roboter keine Punkte',
  },
  mechanism: {
    word: 'Mechanismus',
    means: 'was einem Schritt oder dem Antrieb seine Zeit aus Motoren, Rädern, Zylindern und Wegen gibt',
  },
  option: { word: 'Möglichkeit', means: 'ein Entwurf mit einer Art, ihn zu spielen' },
  pace: { word: 'Tempo', means: 'ein Faktor auf die Zeit der Fahrt, weil niemand die ideale Linie fährt' },
  partsShelf: {
    word: 'Bauteile',
    means: 'Motoren, Zylinder, Ventile, Kompressoren, Behälter und Räder mit ihren Zahlen, jedes mit Quelle und Datum',
  },
  pickOrder: {
    word: 'Wunschliste',
    means:
      'wen man zuerst einlädt: um wie viel eher die fertige Allianz mit einem Team gewinnt als mit dem, das bei unserem nächsten Zug vermutlich noch frei ist',
  },
  policy: {
    word: 'Fahrplan',
    means: 'was zu tun das Beste ist, für jeden Ort, jede Ladung und jede verbleibende Zeit',
  },
  rankingPoints: {
    word: 'Ranglistenpunkte',
    means: 'was ein Match für die Rangliste zählt: für sein Ergebnis und für jeden verdienten Bonus',
  },
  reading: {
    word: 'Lesart',
    means: 'eine Fassung des Spiels mit einem Namen: die Regeln, wie ein Satz von ihnen gelesen werden kann',
  },
  reduction: { word: 'Untersetzung', means: 'Umdrehungen eines Motors für eine Umdrehung dessen, was er antreibt' },
  regret: {
    word: 'Reue',
    means: 'die Punkte, die eine Wahl im Mittel gegen die beste Wahl verliert, hätten wir alles gewusst',
  },
  round: {
    word: 'Schätzrunde',
    means: 'blinde Schätzungen eines Wegs durch viele, verborgen, bis sie geschlossen wird',
  },
  routine: {
    word: 'Ablauf',
    means: 'was ein Roboter in der autonomen Zeit tut: Schritte mit ihren Zeiten, und wo er danach steht',
  },
  selection: {
    word: 'Auswahl',
    means:
      'wie die Allianzen der Playoffs gebildet werden: Kapitäne laden der Reihe nach ein, und wer unter einem eingeladenen Kapitän steht, rückt auf',
  },
  setAside: { word: 'beiseitegelegt', means: 'ein Team, das man aus einem Grund nicht einlädt, den keine Zahl kennt' },
  sharedLuck: {
    word: 'gemeinsames Glück',
    means:
      'zwei Aufstellungen treffen Match für Match dieselben Zufallszahlen, sodass jeder Unterschied von den Aufstellungen kommt',
  },
  spot: { word: 'Standpunkt', means: 'wo die Mitte des Roboters steht, wenn er an einem Ort arbeitet' },
  stage: {
    word: 'Schritt',
    means: 'ein Teil eines Wegs mit eigener Dauer, etwa das Stück zurechtzurücken oder hochzudrehen',
  },
  standardError: {
    word: 'Standardfehler (±)',
    means:
      'wie weit eine Zahl aus vielen gespielten Matches gewöhnlich aus Zufall daneben liegt, in 2 von 3 Fällen höchstens; viermal so viele Matches halbieren ihn',
  },
  strength: {
    word: 'Stärke',
    means:
      'wie gut alle Spielweisen eines Schnellblatts gespielt werden: ein Faktor auf ihre Zeiten und einer auf ihre Erfolgschancen',
  },
  surrogate: {
    word: 'Ersatzteam',
    means:
      'ein Roboter in einem Match, das für seine Allianz zählt und nicht für ihn selbst, wo die Teams die Matches nicht gleichmäßig füllen',
  },
  swing: {
    word: 'Ausschlag',
    means: 'wie weit eine Unbekannte, von niedrig bis hoch, den Vorsprung der besten Möglichkeit ändert',
  },
  winProbability: {
    word: 'Gewinnwahrscheinlichkeit',
    means: 'der Anteil sehr vieler Matches, den wir gewinnen; ein Unentschieden ist kein Sieg',
  },
  worth: { word: 'Wert', means: 'die Punkte je Match, die eine Sekunde weniger in einem Schritt bringt' },
  workingPressure: {
    word: 'Arbeitsdruck',
    means: 'der Druck hinter dem Regler, mit dem Zylinder gerechnet sind; darunter sind sie langsam und schwach',
  },
  worthOfInformation: {
    word: 'Wert des Wissens',
    means: 'die erwarteten Punkte, die es brächte, eine Unbekannte zu kennen oder zu messen',
  },
  briefing: {
    word: 'Briefing',
    means: 'was Minuten vor einem Match gesagt wird, in je einer Fassung für Coach, Partner und Strategie',
  },
  captain: { word: 'Kapitän', means: 'das Team einer Allianz der Finalrunde, das die anderen einlädt' },
  fieldLane: { word: 'Weg', means: 'die Strecke, die einer unserer Roboter auf dem Feld immer wieder fährt' },
  gain: {
    word: 'Gewinn',
    means:
      'um wie viel wahrscheinlicher unsere vollständige Allianz mit einem Team gewinnt als mit dem Ersatz, in Prozentpunkten',
  },
  look: {
    word: 'Blick',
    means:
      'ein Match, in dem jemand einen Roboter beobachtet; so viel wert, wie er unsere nächste Wahl voraussichtlich verbessert',
  },
  replacement: { word: 'Ersatz', means: 'das beste Team, das bei unserem nächsten Zug voraussichtlich noch frei ist' },
  seed: { word: 'Startplatz', means: 'der Platz in der Rangliste, mit dem ein Team in die Auswahl geht' },
  threat: { word: 'Gefahr', means: 'der Gegner, den zu bremsen uns am meisten bringt' },
}
