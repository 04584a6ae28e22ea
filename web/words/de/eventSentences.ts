import type { eventSentences, Named } from '../../../src/model/event/sentences.ts'
import type { Refusal } from '../../../src/model/picks/selection/types.ts'
import type { Alliance, Phase } from '../../../src/model/scouting/types.ts'
import type { Words } from '../catalogue.ts'

const phases: Record<Phase, string> = {
  practice: 'Training',
  qualification: 'Qualifikation',
  playoff: 'Playoff',
}
const sides: Record<Alliance, string> = { red: 'Rot', blue: 'Blau' }

const notInvited: Record<Refusal, string> = {
  unknown: 'steht nicht in der Setzliste',
  declined: 'hat schon abgelehnt und wird nicht wieder eingeladen',
  withdrawn: 'nimmt nicht teil',
  captain: 'ist Kapitän und darf jetzt nicht eingeladen werden',
  taken: 'ist schon in einer Allianz',
  own: 'ist in der Allianz, die an der Reihe ist',
  over: 'kann nicht mehr eingeladen werden: Die Auswahl ist beendet',
  running: 'kann einer Allianz erst nach der Auswahl beitreten',
  noAlliance: 'kann keiner Allianz beitreten, die keinen Kapitän hat',
}

const title = ({ phase, number, play }: Named): string =>
  `${phases[phase]} ${number}${play === 1 ? '' : `, ${play}. Austragung`}`

/** What is wrong with schedules, results and assignments, in German. */
export const ofEvents: Pick<Words['problems'], keyof typeof eventSentences> = {
  teamTwice: ({ match, team }) => `${title(match)}: Das Team ${team} spielt zweimal mit`,
  unknownTeam: ({ match, team }) => `${title(match)}: Das Team ${team} steht nicht unter den Teams der Veranstaltung`,
  positionTwice: ({ match, alliance, position }) =>
    `${title(match)}: Position ${position} von ${sides[alliance]} ist zweimal vergeben`,
  matchTwice: ({ match }) => `${title(match)} kommt zweimal vor`,
  matchIdTwice: ({ id }) => `Zwei Matches haben die Kennung „${id}“`,
  voidsNothing: ({ match, id }) => `${title(match)} ersetzt „${id}“, das kein Match des Zeitplans ist`,
  voidsOther: ({ match, voided }) =>
    `${title(match)} kann nur eine frühere Austragung desselben Matches ersetzen, nicht ${title(voided)}`,
  voidedTwice: ({ match, voided }) => `${title(match)} ersetzt ${title(voided)}, das schon ein anderes Match ersetzt`,
  playWithoutVoid: ({ match }) => `${title(match)} ersetzt keine frühere Austragung: Beide Ergebnisse würden zählen`,
  sameTime: ({ match, other, teams }) =>
    `${title(match)} ist zur selben Zeit wie ${title(other)}, und in beiden spielt ${teams.join(', ')}`,
  allianceTooLarge: ({ teams, most }) =>
    `In den Playoffs spielen ${teams.join(', ')} zusammen: Eine Allianz hat höchstens ${most} Roboter`,
  noMatch: ({ id }) => `„${id}“ ist kein Match des Zeitplans`,
  resultTwice: ({ match }) => `${title(match)}: Dafür gibt es zwei Ergebnisse`,
  otherMatch: ({ entry, result }) => `Der Eintrag betrifft das Match „${entry}“, sein Ergebnis „${result}“`,
  unknownBonus: ({ match, id }) => `${title(match)}: Das Spiel hat keinen Bonus „${id}“`,
  unknownGoal: ({ match, id }) => `${title(match)}: Das Spiel hat kein Ziel „${id}“`,
  partsAboveTotal: ({ match, alliance, parts, total }) =>
    `${title(match)}, ${sides[alliance]}: Die Kategorien ergeben ${parts}, mehr als die Summe von ${total}`,
  resultOfVoided: ({ match, by }) =>
    `${title(match)} ist durch ${title(by)} ersetzt: Sein Ergebnis bleibt erhalten und zählt nicht`,
  seatTwice: ({ match, alliance, position }) =>
    `${title(match)}: ${sides[alliance]}, Position ${position} ist zweimal eingeteilt`,
  personTwice: ({ match, person }) => `${title(match)}: ${person} soll zwei Roboter beobachten`,
  noWatcher: ({ person }) => `Hier gibt es niemanden mit der Kennung „${person}“`,
  selectionNotBegun: () => 'Es hat noch keine Auswahl begonnen: Beginne sie mit Regeln und Setzliste',
  selectionNotLast: () => 'Nur die letzte Zeile, die gilt, kann zurückgenommen werden',
  seedTwice: ({ team }) => `Das Team ${team} ist zweimal genannt`,
  noTeamOfEvent: ({ team }) => `Das Team ${team} steht nicht unter den Teams der Veranstaltung`,
  notInvitable: ({ team, kind }) => `Das Team ${team} ${notInvited[kind]}`,
  otherTopic: () => 'Zeilen, die zusammen gesendet werden, müssen alle dasselbe Thema haben',
  changedMeanwhile: () =>
    'Die Veranstaltung wurde geändert, seit du sie angesehen hast: Sieh noch einmal nach, bevor du das übernimmst',
  noEvent: ({ id }) => `Es gibt keine Veranstaltung mit der Kennung „${id}“`,
  whoTakes: () => 'Sag, wer den Platz übernimmt',
  onlyForYourself: () => 'Einen Platz übernimmt man für sich selbst; eine Leitung kann es für andere tun',
}
