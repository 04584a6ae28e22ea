import type { Words } from '../catalogue.ts'

export const picks: Words['picks'] = {
  title: 'Auswahl',
  loading: 'die Auswahl',
  theOrder: 'die Wunschliste',
  notLoaded: 'Die Auswahl konnte nicht geladen werden',
  notComputed: 'Die Wunschliste konnte nicht berechnet werden',
  tooFewTeams: 'Für Allianzen sind es zu wenige Teams',
  tooFewTeamsHow: 'Mindestens sechs Teams: Trage zuerst die Teams der Veranstaltung ein.',
  us: 'Wir sind',
  chooseUs: 'Wähle ein Team',
  keptSince: (when) => `Der Server ist nicht erreichbar: berechnet aus dem, was am ${when} bekannt war.`,
  askingSince: (when) => `Berechnet aus dem Stand vom ${when}; der Server wird nach Neuerem gefragt.`,
  asOf: (when) => `Berechnet aus dem Stand vom ${when}.`,
  waiting: (count) =>
    count === 1
      ? 'Eine Zeile ist nur auf diesem Gerät; sie wird gesendet, sobald der Server antwortet.'
      : `${count} Zeilen sind nur auf diesem Gerät; sie werden gesendet, sobald der Server antwortet.`,
  clash: 'Jemand anderes war schneller',
  clashHow: 'Was andere geschrieben haben, steht unten schon. Deins ist noch nicht geschrieben:',
  writeAfter: 'Dahinter schreiben, was noch passt',
  discard: 'Verwerfen',
  lines: {
    begins: 'Eine Auswahl beginnt',
    undoes: 'Rückgängig',
    aside: 'Ein Team beiseitegelegt, oder nicht mehr',
    order: 'Unsere eigene Reihenfolge',
  },
  calling: 'Die Auswahl läuft',
  turn: (alliance, captain, round) => `Allianz ${alliance} mit Kapitän ${captain} lädt ein, Runde ${round}`,
  ourTurn: (alliance, round) => `Wir sind an der Reihe: Allianz ${alliance}, Runde ${round}`,
  over: 'Die Auswahl ist beendet',
  whatIsCalled: 'Was ausgerufen wird',
  kinds: { accepts: 'Nimmt an', declines: 'Lehnt ab', withdraws: 'Ist nicht da' },
  names: {
    accepts: 'Teams, die eingeladen werden können: Ein Tippen sagt, dass es annimmt',
    declines: 'Teams, die eingeladen werden können: Ein Tippen sagt, dass es ablehnt',
    withdraws: 'Teams, die eingeladen werden können: Ein Tippen sagt, dass es nicht da ist',
  },
  said: {
    accepts: (team) => `${team} hat angenommen.`,
    declines: (team) => `${team} hat abgelehnt.`,
    withdraws: (team) => `${team} ist nicht da.`,
    joins: (team) => `${team} ist einer Allianz beigetreten.`,
  },
  joining: 'Ein Roboter kann nicht spielen: Ein anderes Team tritt bei',
  joins: 'Allianz, der es beitritt',
  namesJoining: (alliance) => `Teams, die übrig sind: Ein Tippen lässt eins der Allianz ${alliance} beitreten`,
  undo: 'Rückgängig',
  unbegin: 'Den Beginn zurücknehmen',
  surelyUnbegin: 'Dann hat die Auswahl nicht begonnen, für alle, die zusehen.',
  keep: 'So lassen',
  alliances: 'Allianzen',
  alliance: 'Allianz',
  captain: 'Kapitän',
  partners: 'Partner, in ihrer Reihenfolge',
  ours: 'unsere',
  isOnTurn: 'an der Reihe',
  nobody: 'niemand',
  declined: (teams) => `Abgelehnt und nicht wieder eingeladen: ${teams}.`,
  withdrawn: (teams) => `Nicht da: ${teams}.`,
  order: 'Wunschliste',
  ourAlliance: (teams) => `Unsere Allianz: ${teams}.`,
  alone: (team) => `Aus der Sicht von ${team}, noch allein.`,
  asLastCaptain:
    'Nach der jetzigen Rangliste sind wir kein Kapitän: Gerechnet ist, als würden wir der letzte. Was einem Kapitän zu sagen ist, der uns einlädt, steht hier, sobald die Wahl läuft.',
  noCaptain:
    'Wie es steht, sind wir kein Kapitän: Die Liste ist die, nach der wir gingen, wenn wir als Nächste aus allen wählen dürften, die übrig sind. Was einem Kapitän zu sagen ist, der uns einlädt, steht oben, solange eine andere Allianz an der Reihe ist.',
  tooFewToSimulate: 'Nichts zu simulieren: Wie es steht, wären wir weniger als drei Roboter.',
  against: (team, { captain, free }) => {
    if (!free) return `Vermutlich wird jedes Team gewählt: Gewinne gelten gegenüber ${team}, dem letzten der Liste.`
    return captain
      ? `Gewinne gelten gegenüber ${team}, das bei unserem nächsten Zug vermutlich noch frei sein wird.`
      : `Gewinne gelten gegenüber ${team}, dem besten Team, das vermutlich niemand nimmt.`
  },
  need: (part, points, chance) =>
    `Uns fehlt ${part}: ${points} Punkte je Roboter weniger als die anderen (${chance} sicher).`,
  autonomous: 'Autonomie',
  finishing: 'ein Abschluss',
  refine: 'Mit simulierten Matches verfeinern',
  refined: 'Noch einmal verfeinern',
  refining: 'Bisher simuliert',
  stop: 'Anhalten',
  reordering: 'Wird berechnet …',
  rough: 'Eine erste, grobe Liste; die genaue folgt gleich.',
  states: {
    running: 'Wird simuliert …',
    stopped: 'Angehalten; was simuliert wurde, bleibt.',
    done: 'Verfeinert.',
  },
  noChoices: 'Es gibt niemanden, den wir einladen können.',
  orderTable: 'Wunschliste: Tabelle',
  place: 'Platz',
  team: 'Team',
  gain: 'Gewinn an Siegchance, Prozentpunkte',
  better: 'Besser als das nächste',
  even: 'gleichauf',
  stillFree: 'Noch frei bei unserem nächsten Zug',
  answers: 'Bringt, was uns fehlt',
  takeTeam: (team) => `${team}: einladen, und es nimmt an`,
  percentagePoints: (value) => `${value}`,
  gainTold: (mean, low, high) => `${mean} (${low} bis ${high})`,
  winTold: (win, error) => `Sieg ${win}, ± ${error}`,
  orderHow: (simulated) =>
    `Gewinn: um wie viel wahrscheinlicher unsere fertige Allianz ein Match der Playoffs gewinnt als mit dem Team der Zeile oben. Der Balken fasst 80 % dessen, was man von den Teams nicht weiß. Dass andere nach Punkten einladen, die sie erwarten, ist eine Annahme. ${
      simulated > 0
        ? `Die ersten sind simuliert, jedes mit bis zu ${simulated} Matches.`
        : 'Noch nicht einzeln simuliert.'
    } ± ist der Zufall der Simulation.`,
  ownOrder: 'Unsere eigene Reihenfolge',
  noOwnOrder:
    'Von Hand ist nichts geändert: Das ist die berechnete Reihenfolge. Was keine Zahl weiß, kann ein Team verschieben.',
  costsNothing: 'Gegenüber der berechneten Reihenfolge kostet das nichts.',
  dearest: (team, before, by) => `Am teuersten: ${team} vor ${before} kostet ${by.replace(/^\+/, '')} Prozentpunkte.`,
  cost: (before, mean, low, high) =>
    `vor ${before} kostet ${mean.replace(/^\+/, '')} Prozentpunkte (${low} bis ${high})`,
  computedPlace: (place) => `berechnet: ${place}`,
  up: (team) => `${team} nach oben`,
  down: (team) => `${team} nach unten`,
  changeOrder: 'Die Reihenfolge, zum Ändern',
  keepOrder: 'Diese Reihenfolge behalten',
  asComputed: 'Zurück zur berechneten',
  offer: (alliance) => `Falls Allianz ${alliance} uns einlädt`,
  offerHow:
    'Annehmen oder ablehnen, nach der Chance, die Veranstaltung zu gewinnen: Frag das, bevor ein Kapitän herüberschaut.',
  compare: 'Annehmen und Ablehnen vergleichen',
  comparing: 'Auswahl und Playoffs werden weitergespielt …',
  betterAccept: 'Annehmen ist besser',
  betterDecline: 'Ablehnen ist besser',
  noDifference: 'Kein Unterschied, der sich feststellen ließe',
  offerTold: (accept, decline, difference) =>
    `Chance, die Veranstaltung zu gewinnen: ${accept}, wenn wir annehmen, ${decline}, wenn wir ablehnen (Unterschied ${difference} Prozentpunkte).`,
  offerError: (low, high) => `Der Unterschied liegt nach dem Zufall der Läufe zwischen ${low} und ${high}.`,
  offerPlays: (plays) => `Nach einer Ablehnung spielen wir in ${plays} der Fälle mit.`,
  offerAssumes:
    'Angenommen ist, dass andere nach Punkten einladen, die sie erwarten, und dass annimmt, wer eingeladen wird. Was eine Ablehnung bedeutet, sagen die Regeln der Veranstaltung.',
  aside: 'Beiseitegelegt',
  asideHow:
    'Wen wir aus einem Grund nicht einladen, den keine Zahl kennt. Sichtbar nur, solange die Taste gehalten wird.',
  hold: 'Zum Sehen halten',
  noneAside: 'Niemand ist beiseitegelegt.',
  asideTeam: 'Team',
  asideReason: 'Grund',
  noReason: 'Sag in ein, zwei Worten, warum.',
  setAside: 'Beiseitelegen',
  bringBack: 'Wieder einladen',
  begin: 'Die Auswahl beginnen',
  beginHow: 'Was angesagt wurde. Von da an sehen alle dieselbe Auswahl.',
  allianceCount: 'Allianzen',
  size: 'Roboter einer Allianz',
  serpentine: 'Die Runden gehen hin und zurück',
  captainsInvitable: 'Kapitäne weiter unten dürfen in der ersten Runde eingeladen werden',
  mayBeCaptain: 'Wer abgelehnt hat, darf noch Kapitän sein',
  seeds: 'Teams, das bestgesetzte zuerst',
  seedsHow:
    'Nach der Rangliste, wie sie hier bekannt ist. Es gilt die amtliche Reihenfolge: Berichtige, wo sie anders ist.',
  beginNow: 'Beginnen',
  rulesDecide: 'Die Regeln der Veranstaltung entscheiden; hier steht, was üblich ist.',
  unknownTeam: (team) => `„${team}“ steht nicht unter den Teams der Veranstaltung.`,
  twice: (team) => `Das Team ${team} ist zweimal genannt.`,
  tooFew: (seeds, alliances) =>
    `${seeds} Teams sind zu wenige für ${alliances} Allianzen, die mindestens zwei Roboter haben.`,
}
