import type { Words } from '../catalogue.ts'

export const pit: Words['pit'] = {
  nobody: 'Auf diesem Telefon ist niemand angemeldet. Geh zurück und sag zuerst, wer du bist.',
  noEvent:
    'Dieses Telefon hat noch keine Veranstaltung. Lies den Code vom Bildschirm der Leitung oder verbinde dich einmal.',
  team: 'Team',
  teamMissing: 'Bitte ein Team wählen.',
  otherTeam: 'Ein anderes Team',
  teamNumber: 'Nummer des Teams',
  teamWrong: 'Bis zu 12 Buchstaben, Ziffern oder Bindestriche.',
  note: 'Notiz',
  keep: 'Auf diesem Telefon behalten',
  kept: 'Behalten. Es wird mit den anderen Aufzeichnungen gesendet.',
  another: 'Noch eine',
  kinds: {
    visit: 'Besuch an der Box',
    ranking: 'Reihung',
    change: 'Roboter verändert',
    photo: 'Foto',
    drill: 'Probe',
    withdrawal: 'Wieder herausgenommen',
  },
  visit: {
    title: 'Besuch an der Box',
    intro: 'Was das Team über sich selbst sagt: Es gilt als behauptet, nicht als gesehen.',
    caution:
      'Boxen sind Werkstätten: Trag eine Schutzbrille, frag, bevor du herantrittst, und lass die Hände von Robotern, Akkus und Druckluft.',
    goal: (name) => `${name}: Stücke je Match`,
    cycle: 'Sekunden für einen Zyklus',
    finish: 'Abschluss',
    unsaid: 'nicht gesagt',
    routines: 'Autonome Routinen, durch Kommas getrennt',
    size: 'Größe, in ihren Worten',
    mass: 'Masse in kg',
    photos: 'Fotos',
    photosHelp: 'Bis zu 4. Frag vorher und lass Menschen aus dem Bild. Ort und Zeit werden daraus entfernt.',
    addPhoto: 'Foto machen oder wählen',
    photo: (number) => `Foto ${number}`,
    drop: (number) => `Foto ${number} weglassen`,
    photoTrouble: 'Dieses Bild war nicht zu lesen. Wähle ein anderes.',
    notANumber: (got) => `„${got}“ ist keine Zahl ab 0.`,
    tooMuch: (most) => `Höchstens ${most}.`,
    empty: 'Sag mindestens eine Sache oder mach ein Foto.',
  },
  rank: {
    title: 'Roboter reihen',
    intro: 'Zieh vom besten bis zum dritten über die drei Roboter, oder tippe sie in dieser Reihenfolge an.',
    match: 'Match',
    alliance: 'Allianz',
    red: 'Rot',
    blue: 'Blau',
    by: 'Nach',
    driving: 'Fahren',
    defence: 'Verteidigung',
    robot: (team, place) => (place === 0 ? `Mannschaft ${team}` : `Mannschaft ${team}, Platz ${place}`),
    order: (order) => `Beste zuerst: ${order}`,
    again: 'Von vorn',
    noMatches: 'Der Zeitplan ist leer: Es gibt noch nichts zu reihen.',
  },
  change: {
    title: 'Roboter verändert',
    intro: 'Ein neuer Mechanismus, ein anderer Antrieb: Was vorher gesehen wurde, sagt von da an weniger.',
    after: 'Nach welchem Match',
    before: 'vor seinem ersten',
    what: 'Was neu ist',
  },
  show: {
    title: 'Aufzeichnungen als Code zeigen',
    intro: 'Für die Kamera der Leitung. Stell den Bildschirm hell und halt ihn ruhig.',
    label: (count) => (count === 1 ? 'Code mit 1 Aufzeichnung' : `Code mit ${count} Aufzeichnungen`),
    none: 'Alles, was dieses Telefon hat, ist auf dem Server.',
    which: 'Welche',
    waiting: 'noch nicht auf dem Server',
    all: 'alle dieser Veranstaltung',
    photos: (count) =>
      count === 1
        ? 'Ein Foto ist zu lang für einen Code: Es geht über das Netz oder als Datei.'
        : `${count} Fotos sind zu lang für einen Code: Sie gehen über das Netz oder als Datei.`,
    stays:
      'Die Aufzeichnungen bleiben auf diesem Telefon und werden noch einmal gesendet, wenn ein Netz da ist; nichts zählt doppelt.',
    noGame:
      'Einige entstanden mit einem Stand des Spiels, den dieses Telefon nicht mehr hat; sie werden ausgeschrieben, das ist länger.',
  },
  read: {
    title: 'Code der Leitung lesen',
    intro: 'Teams, Zeitplan und wer wen beobachtet, ohne Netz.',
    rows: 'Das sind Aufzeichnungen eines Telefons. Nur die Seite zum Abgeben nimmt sie an.',
    done: (event, matches, at) =>
      matches === 1
        ? `${event}: 1 Match, Stand ${at}, ist auf diesem Telefon.`
        : `${event}: ${matches} Matches, Stand ${at}, sind auf diesem Telefon.`,
    not: {
      same: 'Genau das hat dieses Telefon schon.',
      older: 'Dieses Telefon hat schon etwas Neueres; nichts wurde geändert.',
      needsGame: 'Auf diesem Telefon fehlt das Spiel selbst. Bitte die Leitung, den Code mit dem Spiel zu zeigen.',
    },
    home: 'Zum nächsten Match',
  },
}
