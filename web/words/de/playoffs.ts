import type { Words } from '../catalogue.ts'

const games = (count: number) => (count > 1 ? `, bis zu ${count} Spiele` : '')

export const playoffs: Words['playoffs'] = {
  title: 'Playoffs',
  loading: 'die Playoffs',
  notLoaded: 'Die Playoffs konnten nicht geladen werden',
  none: 'Es gibt noch keine Allianzen',
  noneHow:
    'Schreib die Auswahl mit, wie sie ausgerufen wird, oder trage die Matches der Playoffs ein: Dann kennt diese Seite sie.',
  toPicks: 'Zur Auswahl',
  known: {
    selection: 'Allianzen, wie sie ausgerufen wurden.',
    matches: 'Allianzen, wie sie zusammen gespielt haben, in der Folge ihrer ersten Matches.',
  },
  stillRunning: 'Die Auswahl ist noch nicht beendet.',
  formats: {
    double: (alliances) => `Doppel-K.-o. von ${alliances} Allianzen.`,
    bestOf: (alliances) => `Serien unter ${alliances} Allianzen.`,
  },
  chances: 'Wer die Veranstaltung gewinnt',
  theChances: 'die Chancen',
  chancesHow:
    'Der Spielbaum wird 10.000-mal weitergespielt, von da, wo er steht, jedes Mal mit einer Ziehung dessen, was man von den Teams nicht weiß. Von vier Robotern spielen die drei, von denen zusammen die meisten Punkte zu erwarten sind. ± ist der Zufall der Läufe.',
  alliance: 'Allianz',
  robots: 'Roboter',
  finals: 'Kommt ins Finale',
  wins: 'Gewinnt die Veranstaltung',
  sits: (teams) => `setzt aus: ${teams}`,
  numbered: (number) => `Allianz ${number}`,
  oursNumbered: (number) => `Allianz ${number}, unsere`,
  bracket: 'Spielbaum',
  bracketTable: 'Spielbaum: Tabelle',
  chancesTable: 'Chancen aller Allianzen: Tabelle',
  threesTable: 'Chancen jeder Dreiergruppe: Tabelle',
  tie: 'Nr.',
  part: 'Runde',
  meet: 'Wer gegen wen',
  stands: 'Stand',
  parts: {
    upper: (round, count) => `Oberer Teil, Runde ${round}${games(count)}`,
    lower: (round, count) => `Unterer Teil, Runde ${round}${games(count)}`,
    final: (_, count) => `Finale${games(count)}`,
  },
  from: {
    winner: (tie) => `Sieger von Nr. ${tie}`,
    loser: (tie) => `Verlierer von Nr. ${tie}`,
  },
  against: (one, other) => `${one} – ${other}`,
  won: (number) => `Allianz ${number} hat gewonnen`,
  open: 'offen',
  apart: (count) =>
    count === 1
      ? 'Ein Match der Playoffs passt zu keiner offenen Begegnung und bleibt außen vor.'
      : `${count} Matches der Playoffs passen zu keiner offenen Begegnung und bleiben außen vor.`,
  fourth: 'Wer aussetzt',
  fourthHow: 'Die Chance, die Veranstaltung zu gewinnen, mit je drei unserer vier Roboter, bei gleichem Glück.',
  theThrees: 'die Dreier',
  compareThrees: 'Die Dreier vergleichen',
  bestThree: (teams) => `Am besten mit ${teams}.`,
  noBestThree: 'Kein Dreier ist um mehr als den Zufall der Läufe besser.',
  play: 'Spielen',
  sitsOut: 'Setzt aus',
  fourthRules: 'Ob und wann Roboter getauscht werden dürfen, sagen die Regeln der Veranstaltung.',
  roles: 'Rollen zum Gewinnen',
  rolesHow: (teams) =>
    `Rangpunkte gibt es nicht mehr: Gesucht sind die Rollen von ${teams} mit der besten Chance, ein Match zu gewinnen, auch solche, die einen der Gegner decken.`,
  opponent: 'Gegen',
  slowdown: 'Ein gedeckter Roboter fährt länger um',
  markFrom: 'Decken beginnt vor dem Ende',
  opponentSeen: (robots) => `Gegen ${robots}.`,
  seenTimes: (team, times) => `${team} (in ${times === 1 ? 'einem Match' : `${times} Matches`} gesehen)`,
  assumed:
    'Wie sehr Decken aufhält, ist eine Annahme; Fouls beim Decken sind nicht gezählt. 0 % sucht Rollen ohne Decken.',
  search: 'Rollen suchen',
  searching: 'Aufstellungen spielen gegeneinander …',
  foundAgainst: (teams) => `Gegen ${teams}:`,
}
