import type { Words } from '../catalogue.ts'

export const visits: Words['visits'] = {
  title: 'Besuche an der Box und Reihungen',
  intro:
    'Was Teams über sich selbst sagen, ist behauptet, nicht gesehen: In einer Vorhersage zählt es höchstens wie ein halbes Match. Reihungen sind die Ordnung der Roboter eines Matches, wie sie jemand mit Erfahrung sieht.',
  loading: 'Besuche und Reihungen',
  notLoaded: 'Besuche und Reihungen konnten nicht geladen werden',
  nothing: 'Noch kein Besuch und keine Reihung',
  nothingHelp:
    'Beobachter fügen sie auf der Tribüne hinzu, unter „Besuch an der Box“, „Roboter reihen“ und „Roboter verändert“.',
  team: (team) => `Team ${team}`,
  claimed: 'behauptet',
  said: (scout, at) => `gegenüber ${scout}, ${at}`,
  changed: (match, after) => (after ? `Nach ${match} verändert.` : 'Vor dem ersten Match verändert.'),
  photo: (number, team) => `Foto ${number} von Team ${team}`,
  photoMissing: 'Ein Foto ist noch auf dem Telefon.',
  photoComes: 'Das Foto ist unterwegs.',
  photosNotLoaded: 'Die Fotos konnten nicht geladen werden',
  claims: {
    aMatch: (pieces) => `${pieces} je Match`,
    cycle: 'Zyklus',
    finish: 'Abschluss',
    routines: 'Routinen',
    size: 'Größe',
    mass: 'Masse',
    kilograms: (mass) => `${mass} kg`,
  },
  rankings: 'Reihungen mit Erfahrung',
  rankingsTable: 'Tabelle der Reihungen',
  match: 'Match',
  by: 'Nach',
  order: 'Beste zuerst',
  who: 'Gereiht von',
  ranked: { driving: 'Fahren', defence: 'Verteidigung' },
}
